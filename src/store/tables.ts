/** The reading table of the survey on the bench, laid out once for all who ask. */
import type { Job } from '../job/schema.ts';
import { type ReadingTable, readingTable } from '../job/table.ts';
import { type Bench, benchOf } from './bench.ts';
import type { TableSize } from './entry.ts';
import { jobStore } from './job.ts';
import { useSession } from './session.ts';

export interface Laid {
  /** As it was when the table was laid out: what is decided about the bore may have changed since. */
  readonly bench: Bench;
  readonly table: ReadingTable;
  readonly size: TableSize;
}

let last: { job: Job; bore: number; survey: number; laid: Laid | null } | null = null;

export function tableOf(job: Job | null, bore: number, survey: number): Laid | null {
  if (job === null) return null;
  if (last !== null && last.job === job && last.bore === bore && last.survey === survey) {
    return last.laid;
  }
  const bench = benchOf(job, null, { bore, survey });
  const laid = bench === null ? null : (stillLaid(bench) ?? lay(bench));
  last = { job, bore, survey, laid };
  return laid;
}

/** The last table, where all that it comes of is as it was: a target that is dragged lays nothing out anew. */
function stillLaid({ job, bore, survey }: Bench): Laid | null {
  const before = last?.laid ?? null;
  if (before === null || before.bench.survey !== survey) return null;
  const same =
    alikeBut('features', before.bench.job, job) && alikeBut('decisions', before.bench.bore, bore);
  return same ? before : null;
}

/** Edits leave what they do not change as it is. */
function alikeBut<T extends object>(but: keyof T, before: T, now: T): boolean {
  const keys = new Set([...Object.keys(before), ...Object.keys(now)]) as Set<keyof T>;
  return [...keys].every((key) => key === but || before[key] === now[key]);
}

function lay(bench: Bench): Laid {
  const table = readingTable(bench.bore, bench.survey, bench.job);
  return { bench, table, size: { rows: table.rows.length, columns: table.clocks.length } };
}

export function tableNow(): Laid | null {
  const { bore, survey } = useSession.getState();
  return tableOf(jobStore.getState().job, bore, survey);
}
