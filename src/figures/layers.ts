/** What may be laid over the wall, drawn out on a mesh of its own, coarser than the wall's. Per side, mm. */
import type { SurveyEvaluation } from '../evaluate.ts';
import { resample } from './sample.ts';
import { wallOf } from './wall.ts';

export interface Layers {
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the rim, column by column from the cut, the last column on the cut again; 0 not known. */
  readonly deviation: Float32Array;
  /** Metal to take off at the mean; 0 where none is asked off or nothing may be ground. */
  readonly off: Float32Array;
  /** What one pass takes of it. */
  readonly pass: Float32Array;
}

const COLUMNS = 160;
const ROWS = 56;

/**
 * @param pass what the pass looked at takes off, per side, mm; null: what a first pass may take
 * @returns null where there is no surface; without a target there is nothing to take off, and the layers are empty
 */
export function layersOf(
  survey: SurveyEvaluation,
  cut: number,
  pass: Float64Array | null = null,
): Layers | null {
  const wall = wallOf(survey);
  if (wall === null) return null;
  const drawn = (field: Float64Array | undefined, least: number) =>
    field === undefined
      ? new Float32Array((COLUMNS + 1) * (ROWS + 1))
      : closed(resample(wall.grid, field, COLUMNS, ROWS, cut).values, least);
  const removal = wall.about === 'target' ? survey.removal : null;
  return {
    columns: COLUMNS,
    rows: ROWS,
    deviation: drawn(wall.deviation, Number.NEGATIVE_INFINITY),
    off: drawn(removal?.likely, 0),
    pass: drawn(removal === null ? undefined : (pass ?? removal.firstPass), 0),
  };
}

/** With the closing column; never below `least`, and 0 where nothing is known. */
function closed(values: Float64Array, least: number): Float32Array {
  const width = COLUMNS + 1;
  return Float32Array.from({ length: width * (ROWS + 1) }, (_, at) => {
    const value = values[Math.floor(at / width) * COLUMNS + ((at % width) % COLUMNS)]!;
    return Number.isFinite(value) ? Math.max(least, value) : 0;
  });
}
