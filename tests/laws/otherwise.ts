import { levenbergMarquardt } from 'ml-levenberg-marquardt';

/**
 * Least squares of `distance(parameters, row)` over rows 0 to count - 1 by the other library. It
 * differentiates by central differences of 1e-4 mm, whose error, 1e-8 / radius^2, is what the
 * tolerances below stand on: with deviations of tenths of a mm the answer is off by less than 1e-7.
 */
export function otherwise(
  count: number,
  start: number[],
  distance: (parameters: number[], row: number) => number,
): { parameters: number[]; sumSquares: number } {
  const rows = Array.from({ length: count }, (_, i) => i);
  const { parameterValues } = levenbergMarquardt(
    { x: rows, y: rows.map(() => 0) },
    (parameters: number[]) => (row: number) => distance(parameters, row),
    {
      initialValues: start,
      gradientDifference: 1e-4,
      centralDifference: true,
      damping: 1e-2,
      maxIterations: 200,
      errorTolerance: 0,
    },
  );
  const sumSquares = rows.reduce((s, row) => s + distance(parameterValues, row) ** 2, 0);
  return { parameters: parameterValues, sumSquares };
}
