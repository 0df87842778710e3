import { mean } from '../num/mean.ts';

/** A straight line y = intercept + slope x through points, with what its scatter leaves unknown. */
export interface StraightLine {
  status: 'ok';
  slope: number;
  intercept: number;
  /** standard errors; NaN with two points, which any line fits */
  slopeSd: number;
  interceptSd: number;
  /** between intercept and slope, -1 to 1; NaN with two points */
  correlation: number;
  /** standard deviation of a point about the line (n - 2 to spare); NaN with two points */
  residualSd: number;
  /** about which slope and level are independent */
  meanX: number;
  meanY: number;
  /** sum of (x - meanX)^2 */
  spreadX: number;
  count: number;
}

export type LineFit =
  | StraightLine
  | { status: 'too-few-points'; found: number }
  | { status: 'not-finite'; row: number };

/**
 * Straight line by least squares in y: a taper, when x is the depth and y the diameter (the slope
 * is then across per length) or the radius (per side). Sums are taken about the means, so that a
 * far-off zero costs no digits. Uncertainties as in JCGM 100:2008 (GUM), H.3.
 *
 * @param x at least two different values
 * @param y as many as x
 * @throws RangeError when x and y differ in length
 */
export function straightLine(x: ArrayLike<number>, y: ArrayLike<number>): LineFit {
  const count = x.length;
  if (y.length !== count) throw new RangeError(`${count} x and ${y.length} y`);
  for (let row = 0; row < count; row++) {
    if (!Number.isFinite(x[row]!) || !Number.isFinite(y[row]!))
      return { status: 'not-finite', row };
  }
  const meanX = mean(x);
  const meanY = mean(y);
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < count; i++) {
    const dx = x[i]! - meanX;
    xx += dx * dx;
    xy += dx * (y[i]! - meanY);
  }
  if (!(xx > 0)) return { status: 'too-few-points', found: Math.min(count, 1) };
  const slope = xy / xx;
  let squares = 0;
  for (let i = 0; i < count; i++) {
    squares += (y[i]! - meanY - slope * (x[i]! - meanX)) ** 2;
  }
  const residualSd = count > 2 ? Math.sqrt(squares / (count - 2)) : Number.NaN;
  const atZero = Math.hypot(1 / Math.sqrt(count), meanX / Math.sqrt(xx));
  return {
    status: 'ok',
    slope,
    intercept: meanY - slope * meanX,
    slopeSd: residualSd / Math.sqrt(xx),
    interceptSd: residualSd * atZero,
    correlation: count > 2 ? -meanX / (Math.sqrt(xx) * atZero) : Number.NaN,
    residualSd,
    meanX,
    meanY,
    spreadX: xx,
    count,
  };
}

/** Height of a line at x and its standard error (of the line, not of one more point). */
export function lineAt(line: StraightLine, x: number): { value: number; sd: number } {
  const dx = x - line.meanX;
  return {
    value: line.meanY + line.slope * dx,
    sd: line.residualSd * Math.hypot(1 / Math.sqrt(line.count), dx / Math.sqrt(line.spreadX)),
  };
}
