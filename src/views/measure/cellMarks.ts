/** What a cell's reading says against the target: high, low, or on size; and whether it is in doubt. */
import type { Check, Sighting } from '../../bore/types.ts';
import type { SurveyEvaluation } from '../../evaluate.ts';
import type { Instrument } from '../../job/schema.ts';
import type { TableCell } from '../../job/table.ts';

export type Lean = 'high' | 'low' | 'right' | 'unknown';

export interface CellMark {
  readonly lean: Lean;
  /** Deviation from the target per side, mm, mean of the cell's readings; NaN not known. */
  readonly deviation: number;
  /** Text that cannot be read stands in it. */
  readonly fault: boolean;
  readonly suspect: boolean;
  readonly leftOut: boolean;
}

/** Deviation per side of one value from the target diameter; NaN for instruments that do not show a size. */
export function deviationOf(kind: Instrument, value: number, targetDiameter: number): number {
  if (kind === 'two-point' || kind === 'three-leg') return (value - targetDiameter) / 2;
  return kind === 'radius' ? value - targetDiameter / 2 : Number.NaN;
}

/** One standard deviation of a reading of this kind, as a deviation per side. */
function sdPerSide(kind: Instrument, { sd }: Sighting): number {
  return kind === 'radius' ? sd : sd / 2;
}

export function cellMark(
  cell: TableCell,
  kind: Instrument,
  seen: SurveyEvaluation | null,
): CellMark {
  const counted = cell.readings.filter(({ ok, leftOut }) => ok && !leftOut);
  const target = seen?.target?.diameter ?? Number.NaN;
  const deviations = counted.map(({ mm }) => deviationOf(kind, mm, target));
  const deviation = deviations.reduce((sum, e) => sum + e, 0) / deviations.length;
  const rows = new Set(cell.readings.map(({ row }) => row));
  return {
    deviation,
    lean: leanOf(deviation, kind, seen, rows, deviations.length),
    fault: cell.readings.some(({ ok, why }) => !ok && why !== ''),
    suspect: suspects(seen?.checks ?? [], rows),
    leftOut: cell.readings.length > 0 && cell.readings.every(({ leftOut }) => leftOut),
  };
}

function suspects(checks: readonly Check[], rows: ReadonlySet<number>): boolean {
  return checks.some(({ row, suspect }) => suspect && rows.has(row));
}

/** High or low only beyond two standard deviations of the cell's mean. */
function leanOf(
  deviation: number,
  kind: Instrument,
  seen: SurveyEvaluation | null,
  rows: ReadonlySet<number>,
  count: number,
): Lean {
  const sighting = seen?.sightings.find(({ row }) => rows.has(row));
  if (Number.isNaN(deviation) || sighting === undefined) return 'unknown';
  const give = (2 * sdPerSide(kind, sighting)) / Math.sqrt(count);
  if (Math.abs(deviation) <= give) return 'right';
  return deviation < 0 ? 'high' : 'low';
}
