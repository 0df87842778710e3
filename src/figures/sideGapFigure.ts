/** The room beside a boss as plain data: what stands on each of its sides, to scale along the pin, the boss cut short. */
import type { SideStack } from '../evaluate/fit/sideStack.ts';
import type { Units } from '../job/schema.ts';
import { layerName } from './sideGapWords.ts';

export const SIDE_STACK = { width: 340, height: 128, boss: 84, ear: 34, top: 30, tall: 58 };

export interface StackBar {
  readonly name: string;
  readonly kind: SideStack['layers'][number]['kind'] | 'shims' | 'gap';
  readonly x: number;
  readonly width: number;
}

/** Bars from the boss outward on both sides, after the work; the ears stand at `left` and `right`. */
export interface StackFigure {
  readonly bars: readonly StackBar[];
  readonly left: number;
  readonly right: number;
  /** A length to check by: in drawing units, and as it is written. */
  readonly check: { readonly long: number; readonly text: string };
}

/** @returns null where the gap is not known or nothing goes in */
export function stackFigure({ layers, after, shims }: SideStack, units: Units): StackFigure | null {
  const left = shims?.left ?? after;
  if (!(left.least >= 0)) return null;
  const sides = (['A', 'B'] as const).map((face) => [
    ...layers
      .filter((one) => one.face === face && one.when !== 'now' && one.thickness > 0)
      .map((one) => ({ name: layerName(one), kind: one.kind, thick: one.thickness })),
    ...(shims?.[face] ?? []).map((thick) => ({ name: 'face shim', kind: 'shims' as const, thick })),
    // The boss is drawn in the middle of its room.
    { name: 'gap', kind: 'gap' as const, thick: left.least / 2 },
  ]);
  const sums = sides.map((side) => side.reduce((sum, { thick }) => sum + thick, 0));
  const { width, boss, ear } = SIDE_STACK;
  const room = (width - boss) / 2 - ear;
  const scale = room / Math.max(...sums, 0.5);
  const bars = sides.flatMap((side, at) => {
    let reach = boss / 2;
    return side.map(({ name, kind, thick }): StackBar => {
      const wide = thick * scale;
      const x = at === 0 ? width / 2 - reach - wide : width / 2 + reach;
      reach += wide;
      return { name, kind, x, width: wide };
    });
  });
  return {
    bars,
    left: width / 2 - boss / 2 - sums[0]! * scale,
    right: width / 2 + boss / 2 + sums[1]! * scale,
    check: checkOf(scale, units),
  };
}

/** The longest round length that leaves room for its text. */
function checkOf(scale: number, units: Units): StackFigure['check'] {
  const per = units === 'in' ? 25.4 : 1;
  const sizes = units === 'in' ? [0.1, 0.04, 0.02, 0.01] : [2, 1, 0.5, 0.2];
  const size = sizes.find((one) => one * per * scale <= MOST_CHECK) ?? sizes.at(-1)!;
  return { long: size * per * scale, text: `${size} ${units}` };
}

const MOST_CHECK = 90;
