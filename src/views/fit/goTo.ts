/** Going to a part of the fit, or to the field in which something is typed: what is folded opens on the way. */
import type { FitWant } from '../../figures/fitMissing.ts';
import { useSession } from '../../store/session.ts';

export function foldId(bore: string, bushing: string, part: string): string {
  return `fit-${bore}-${bushing}-${part}`;
}

/** Where a size of this bushing is typed at the head of its fit. */
export function sizeId(bore: string, bushing: string, size: 'inside' | 'boss' | 'pin'): string {
  return `fit-${bore}-${bushing}-size-${size}`;
}

export function setFold(id: string, open: boolean): void {
  const { folds, look } = useSession.getState();
  look({ folds: { ...folds, [id]: open } });
}

export function goToFold(id: string): void {
  setFold(id, true);
  requestAnimationFrame(() => {
    const fold = document.getElementById(id);
    fold?.querySelector('summary')?.focus({ preventScroll: true });
    fold?.scrollIntoView({ block: 'start' });
  });
}

/**
 * @param bushing the one that wants it
 * @param first the first of the same bore: what a bore has once is typed there
 */
export function goToWant(want: FitWant, bore: string, bushing: string, first: string): void {
  const heat = foldId(bore, first, 'heat');
  if (want === 'cold' || want === 'questions') setFold(heat, true);
  requestAnimationFrame(() => {
    const field = fieldOf(want, bore, bushing, first);
    field?.focus({ preventScroll: true });
    field?.scrollIntoView({ block: 'center' });
  });
}

function fieldOf(
  want: FitWant,
  bore: string,
  bushing: string,
  first: string,
): HTMLElement | null | undefined {
  const within = (id: string, field: string) =>
    document.getElementById(id)?.querySelector<HTMLElement>(field);
  switch (want) {
    case 'outside':
      return within('measure', 'input[aria-label^="Outside diameter of the bushing"]');
    case 'inside':
      return within(sizeId(bore, bushing, 'inside'), 'input');
    case 'boss':
    case 'pin':
      return within(sizeId(bore, first, want), 'input');
    case 'cold':
      return within(
        foldId(bore, first, 'heat'),
        'input[aria-label="Temperature of the bushing when it is taken out"]',
      );
    case 'questions':
      // Where the plan itself takes heat they are asked there.
      return (
        within(foldId(bore, first, 'heat'), '.safety input') ?? within('plan', '.safety input')
      );
  }
}
