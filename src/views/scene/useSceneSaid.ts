/** What the words for the drawing are made of, as it stands just now. */
import { factorFor } from '../../figures/exaggeration.ts';
import { sayPlace } from '../../figures/place.ts';
import { pressedHere, pressedWords } from '../../figures/pressedWords.ts';
import type { SceneSaid } from '../../figures/sceneWords.ts';
import type { Units } from '../../figures/steps.ts';
import { useSession } from '../../store/session.ts';
import { useCursor } from '../../store/useCursor.ts';
import { OVERLAYS } from './overlays.ts';
import type { Overlaid } from './useOverlaid.ts';
import type { Shows } from './useShown.ts';
import { factorWords, viewWords } from './words.ts';

export function useSceneSaid(
  { bore, survey, piece, units }: Shows & { readonly units: Units },
  {
    shown,
    circles,
    fit,
    ghost,
    pressed,
    leftOut,
  }: Pick<Overlaid, 'shown' | 'circles' | 'fit' | 'ghost' | 'pressed' | 'leftOut'>,
): SceneSaid {
  const view = useSession((session) => session.view);
  const roll = useSession((session) => session.roll);
  const turn = useSession((session) => session.turn);
  const wanted = useSession((session) => session.exaggeration);
  const cursor = useCursor();
  return {
    view: viewWords({ view, roll, turn }),
    factor: factorWords(factorFor(wanted, piece.exaggeration)),
    laid: OVERLAYS.filter(({ overlay }) => shown[overlay]).map(({ name }) => name),
    zones: shown.zones,
    circles,
    fit,
    pressed: pressed === null ? [] : pressedWords(pressed.answer, pressed.wall),
    leftOut,
    ghost: ghost?.name ?? null,
    place:
      cursor === null
        ? null
        : sayPlace(
            { survey, facts: bore.facts },
            cursor,
            units,
            pressed && pressedHere(pressed.answer, cursor, units),
          ),
  };
}
