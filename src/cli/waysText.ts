/** The ways of mending in the report for people: the page's table, the advice, and why. */
import type { WaysEvaluation } from '../evaluate/ways.ts';
import { absentWords, type WayColumn, wayRows } from '../figures/wayTable.ts';
import { adviceWords, sayRule } from '../figures/wayWords.ts';
import type { Units } from '../job/schema.ts';
import { columns, list, wrapped } from './textLayout.ts';

/** What a line of text has room for; the legend beneath says the rest. */
const HEADS: readonly (readonly [WayColumn, string])[] = [
  ['target', 'made to'],
  ['off', 'off'],
  ['on', 'on'],
  ['pressFit', 'press'],
  ['seated', 'held'],
  ['gap', 'gap'],
  ['wall', 'wall'],
];

/** '' where no way was worked out. */
export function waysText(ways: WaysEvaluation | null, units: Units): string {
  if (ways === null) return '';
  const rows = wayRows(ways, units);
  const table = columns(
    [
      ['', ...HEADS.map(([, head]) => head)],
      ...rows.map(({ title, cells }) => [title, ...HEADS.map(([column]) => cells[column].text)]),
    ],
    (at) => at === 0,
  );
  const legend = `(${units}; made to and least press fit across, worst gap and wall left per side; steel off and on)`;
  const stops = ways.stops.map(({ says, whom }) => `${says} Ask ${whom}.`);
  const absent = absentWords(ways, units);
  return [
    `Ways of mending:\n${table}\n${wrapped(legend)}`,
    wrapped(adviceWords(ways)),
    list([
      ...ways.advice.checks.map((check) => sayRule(check, ways, units)),
      ...rows.map(({ title, says, work, done, why, needs }) =>
        [`${title} (${says}).`, why, done, work, needs].filter((part) => part !== '').join(' '),
      ),
      ...(absent === '' ? [] : [absent]),
      ...stops,
    ]),
  ].join('\n');
}
