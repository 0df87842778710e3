/** A pin's plan as lines of the report for people. */
import type { BoreEvaluation } from '../evaluate.ts';
import { LAND_HEADS, landRows, pinWordGroups } from '../figures/pinWords.ts';
import {
  guardList,
  pinAdvised,
  pinSteps,
  pinWayRows,
  skinCaution,
  TURNING_CAUTIONS,
} from '../figures/pinWork.ts';
import type { Job } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { hotLines } from './buildUpText.ts';
import { doubtText } from './checksReport.ts';
import type { FindPin } from './pinsReport.ts';
import { columns, list, underlined } from './textLayout.ts';

export function pinText(job: Job, pin: BoreEvaluation, find: FindPin): string {
  const { units } = job;
  const keepouts = job.features.find(({ id }) => id === pin.id)?.keepouts ?? [];
  const guard = guardList(keepouts, units).map(
    ({ what, how, done }) => `${done ? '[x]' : '[ ]'} ${what}: ${how}.`,
  );
  const head = `Pin “${pin.name}”, ${formatDepth(pin.facts.length.mm, units)} long.`;
  const surveys = pin.surveys.flatMap((survey) => {
    const plan = find(pin, survey);
    if (plan === null) return [];
    const advised = pinAdvised(plan, units);
    const rows = landRows(plan, units).map(({ name, place, worst, edges, low }) => [
      name,
      place,
      worst,
      ...edges,
      low,
    ]);
    const caution = skinCaution(plan);
    const doubts = doubtText(survey, units);
    return [
      underlined(survey.name),
      ...(doubts === '' ? [] : [doubts]),
      `${columns([LAND_HEADS.slice(), ...rows], (at) => at < 2)}\n(${units} per side against the finished size; + is short, − is to come off)`,
      ...pinWordGroups(plan, units).map(({ head: of, lines }) => `${of}:\n${list(lines)}`),
      ...(advised === null
        ? []
        : [
            `Ways:\n${list([advised, ...pinWayRows(plan, units).map(({ title, figures }) => `${title}: ${figures.join('; ')}.`)])}`,
          ]),
      `Weld:\n${list([...(caution === null ? [] : [caution]), ...hotLines(job, 'pin')(pinSteps(plan)), ...TURNING_CAUTIONS])}`,
    ];
  });
  const guarded =
    guard.length === 0 ? [] : [`To be covered, plugged or left alone:\n${list(guard)}`];
  return [head, ...guarded, ...surveys].join('\n\n');
}
