/** Which surveys of a bore tell the story: what was found worn, what is worked from, and what was read after the work. */
import type { BoreEvaluation, SurveyEvaluation } from '../evaluate.ts';
import { isOfBushing } from '../job/measuredAt.ts';
import type { Feature, Survey } from '../job/schema.ts';

/** A survey that shows a shape, as typed and as worked out. */
export interface Chapter {
  readonly typed: Survey;
  readonly seen: SurveyEvaluation;
}

export interface Chapters {
  /** The last readings as found; where there are none, the first that show a shape. */
  readonly worn: Chapter | null;
  /** The last readings before the grinder: as found, after squeezing or after building up. */
  readonly work: Chapter | null;
  /** The last readings after grinding began; null while there are none. */
  readonly after: Chapter | null;
  /** The bushing's own bore, read once it was pressed in, with no wall read since; null: it was not. */
  readonly fitted: Chapter | null;
}

export function chaptersOf(feature: Feature, bore: BoreEvaluation): Chapters {
  const told = feature.surveys.flatMap((typed): Chapter[] => {
    const seen = bore.surveys.find(({ id }) => id === typed.id);
    return seen === undefined || seen.surface === null ? [] : [{ typed, seen }];
  });
  const walls = told.filter(({ typed }) => !isOfBushing(feature, typed));
  const ground = ({ typed }: Chapter) => typed.stage === 'pass';
  const before = walls.filter((one) => !ground(one));
  const last = told.at(-1) ?? null;
  return {
    worn: walls.filter(({ typed }) => typed.stage === 'as-found').at(-1) ?? walls[0] ?? null,
    work: before.at(-1) ?? null,
    after: walls.filter(ground).at(-1) ?? null,
    fitted: last !== null && isOfBushing(feature, last.typed) ? last : null,
  };
}

/** True where metal is first closed or built up, and nothing was read since: how it will be can only be aimed at. */
export function shapeToCome({ work, after }: Chapters, { decisions: { way } }: Feature): boolean {
  if (after !== null || (way !== 'squeeze' && way !== 'weld')) return false;
  return work !== null && work.typed.stage === 'as-found';
}
