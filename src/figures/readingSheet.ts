/** One page to carry to the bench and fill in by hand: what stands on it. */
import { defaultDepths } from '../job/plan.ts';
import type { Feature, Job, Survey } from '../job/schema.ts';
import { gaugeOf, nominalMm } from '../job/sizes.ts';
import { readingTable } from '../job/table.ts';
import { lengthMm, showTyped } from '../job/units.ts';

/** A table of empty boxes. */
export interface SheetTable {
  readonly head: string;
  readonly columns: readonly string[];
  readonly rows: readonly string[];
}

export interface SheetFigure {
  readonly title: string;
  readonly subtitle: string;
  readonly face: 'A' | 'B';
  readonly tables: readonly SheetTable[];
  /** Lines that end in a blank to write on. */
  readonly blanks: readonly string[];
  readonly reminders: readonly string[];
}

const SWEPT = ['12', '1:30', '3', '4:30', '6', '7:30', '9', '10:30'];
const UNIT_WORDS = { in: 'inches', mm: 'millimetres' } as const;

export function readingSheet(job: Job, bore: Feature, survey: Survey): SheetFigure {
  const { units } = job;
  const { face } = survey.plan;
  const gauge = gaugeOf(job.gauges, survey.plan.gauge);
  const table = readingTable(bore, survey, job);
  const name = gauge?.name ?? 'gauge';
  const tables: SheetTable[] = [
    {
      head: `${name}, readings in ${UNIT_WORDS[units]}${table.kind === 'two-point' ? ', across' : ''}`,
      columns: table.clocks.map(({ text }) => text),
      rows: table.rows.map(({ depthText }) => depthText),
    },
  ];
  if (table.kind === 'two-point' || table.kind === 'three-leg') {
    tables.push({
      head: 'Dial indicator swept round, if there is one: needle, stylus not re-set between depths',
      columns: SWEPT,
      rows: sweptDepths(bore, job).map((depth) => showTyped(depth, units)),
    });
  }
  return {
    title: [job.title, bore.name].filter((text) => text.trim() !== '').join(' · '),
    subtitle: `Reading sheet: ${survey.name}`,
    face,
    tables,
    blanks: [
      'Date and hand',
      'Gauge set on, before',
      'and after',
      'Part, temperature',
      'Gauge, temperature',
      `First place again, at the end${firstPlace(table)}`,
      ...(tables.length > 1 ? ['Needle turning clockwise means a larger / smaller hole'] : []),
    ],
    reminders: [
      'Clean and deburr; let part and gauge reach the same temperature.',
      'Rock the gauge to its turning point at every place.',
      'One sweep at three depths tells more than further clock positions.',
    ],
  };
}

function firstPlace({ clocks, rows }: ReturnType<typeof readingTable>): string {
  const [clock, row] = [clocks[0], rows[0]];
  return clock === undefined || row === undefined ? '' : ` (${clock.text}, ${row.depthText} deep)`;
}

/** Rim, middle and bottom. */
function sweptDepths(bore: Feature, job: Job) {
  const length = lengthMm(bore.length);
  const depths = defaultDepths(length, nominalMm(bore), job.units);
  return depths.filter((_, i) => i === 0 || i === depths.length - 1 || i === depths.length >> 1);
}
