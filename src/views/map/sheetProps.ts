/** What each of the flat drawings is drawn from. */
import type { BoreFacts, SurveyEvaluation } from '../../evaluate.ts';
import type { Theme } from '../../figures/colour.ts';
import type { MapFigure } from '../../figures/map.ts';
import type { PressedWall } from '../../figures/pressedWall.ts';
import type { Wall } from '../../figures/wall.ts';

export interface SheetProps {
  readonly survey: SurveyEvaluation;
  readonly facts: BoreFacts;
  readonly map: MapFigure;
  readonly wall: Wall;
  readonly theme: Theme;
  /** Contact pressure laid over the map, and the same in words; null: not shown. */
  readonly pressed: { readonly wall: PressedWall; readonly words: string } | null;
  /** Factor that wear is drawn with in the section. */
  readonly exaggeration: number;
  /** Room, CSS pixels. */
  readonly width: number;
  readonly height: number;
}
