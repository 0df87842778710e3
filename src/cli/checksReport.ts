/** Readings in doubt as the report names them: rows count from 0, in the order of the survey's list of readings. */
import * as v from 'valibot';
import type { SurveyEvaluation } from '../evaluate.ts';
import { sayDoubts } from '../figures/checkWords.ts';
import type { Units } from '../job/schema.ts';
import { list } from './textLayout.ts';

export const CheckSchema = v.strictObject({
  row: v.number(),
  suspect: v.boolean(),
  slip: v.string(),
  suggested: v.nullable(v.string()),
});

export function checksReport({ checks }: SurveyEvaluation): v.InferOutput<typeof CheckSchema>[] {
  return checks.map(({ row, suspect, slip, suggested }) => ({ row, suspect, slip, suggested }));
}

/** For people; '' where none is in doubt. */
export function doubtText(survey: SurveyEvaluation, units: Units): string {
  const doubts = sayDoubts(survey, units).map(({ rows, text, suggested }) => {
    const which = rows.length === 1 ? `Reading ${rows[0]! + 1}, ` : '';
    return `${which}${text}${suggested === null ? '' : ` Was it meant as ${suggested}?`}`;
  });
  return doubts.length === 0 ? '' : `Readings in doubt (all count until changed):\n${list(doubts)}`;
}
