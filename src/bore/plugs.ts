/**
 * The circles and cylinders that say what enters a bore and what cleans it up (ISO 12181-1, ISO 12180-1): the largest
 * inside, the average, the smallest around, and the narrowest zone for the record. All of the mean surface, between the
 * first and the last measured depth: what was not measured is the surface's guess.
 */
import { fitCircle } from '../geometry/circle.ts';
import { fitCone } from '../geometry/cone.ts';
import { fitCylinder } from '../geometry/cylinder.ts';
import {
  maximumInscribedCircle,
  minimumCircumscribedCircle,
  minimumZoneCircle,
} from '../geometry/minimaxCircle.ts';
import {
  maximumInscribedCylinder,
  minimumCircumscribedCylinder,
  minimumZoneCylinder,
} from '../geometry/minimaxCylinder.ts';
import type { Axis, Plug, Plugs, Section, WearSurface } from './types.ts';

/** Depths of the surface that a cylinder is fitted to; between them it is smooth. */
export const LEVELS = 17;

type Columns = [x: Float64Array, y: Float64Array, z: Float64Array];

/** @param sections the measured depths */
export function plugs(surface: WearSurface, sections: readonly Section[]): Plugs {
  const depths = sections.map(({ z }) => z);
  const [from, to] = [Math.min(...depths), Math.max(...depths)];
  const levels = Array.from({ length: LEVELS }, (_, i) => from + ((to - from) * i) / (LEVELS - 1));
  const wall = to > from ? pointsAt(surface, levels) : null;
  return {
    from,
    to,
    sections: sections.map(({ z }) => circlesOf(z, pointsAt(surface, [z]))),
    bore: wall && {
      average: cylinder(fitCylinder(...wall)),
      zone: cylinder(minimumZoneCylinder(...wall)),
      entering: cylinder(maximumInscribedCylinder(...wall)),
      around: cylinder(minimumCircumscribedCylinder(...wall)),
    },
    taper: wall && coneOf(wall, from, to),
  };
}

function circlesOf(z: number, [x, y]: Columns): Plugs['sections'][number] {
  return {
    z,
    average: circle(fitCircle(x, y)),
    zone: circle(minimumZoneCircle(x, y)),
    entering: circle(maximumInscribedCircle(x, y)),
    around: circle(minimumCircumscribedCircle(x, y)),
  };
}

/** The wall at some depths, mm; straight between the depths of the grid. */
function pointsAt({ grid, mean }: WearSurface, depths: readonly number[]): Columns {
  const turns = grid.theta.length;
  const columns: Columns = [0, 1, 2].map(
    () => new Float64Array(turns * depths.length),
  ) as unknown as Columns;
  depths.forEach((depth, level) => {
    const last = grid.z.length - 1;
    let row = 0;
    while (row < last - 1 && grid.z[row + 1]! < depth) row++;
    const share = (depth - grid.z[row]!) / (grid.z[row + 1]! - grid.z[row]!);
    for (let i = 0; i < turns; i++) {
      const above = mean[row * turns + i]!;
      const r = above + share * (mean[(row + 1) * turns + i]! - above);
      const at = level * turns + i;
      columns[0][at] = r * Math.sin(grid.theta[i]!);
      columns[1][at] = r * Math.cos(grid.theta[i]!);
      columns[2][at] = depth;
    }
  });
  return columns;
}

type CircleFound = { status: string } & Partial<{
  center: [number, number];
  diameter: number;
  deviation: { range: number };
}>;

function circle({ center, diameter, deviation }: CircleFound): Plug | null {
  if (center === undefined) return null;
  const axis = { x: center[0], y: center[1], leanX: 0, leanY: 0 };
  return { axis, diameter: diameter!, range: deviation!.range };
}

type CylinderFound = { status: string } & Partial<{
  axis: { point: [number, number, number]; direction: [number, number, number] };
  diameter: number;
  deviation: { range: number };
}>;

function cylinder({ axis, diameter, deviation }: CylinderFound): Plug | null {
  const straight = axis && axisOf(axis);
  return straight ? { axis: straight, diameter: diameter!, range: deviation!.range } : null;
}

/** As a straight axis along the bore; null for one that lies across it. */
function axisOf({ point, direction }: Required<CylinderFound>['axis']): Axis | null {
  const [leanX, leanY] = [direction[0] / direction[2], direction[1] / direction[2]];
  if (!(Math.hypot(leanX, leanY) < 1)) return null;
  return { x: point[0] - leanX * point[2], y: point[1] - leanY * point[2], leanX, leanY };
}

function coneOf(wall: Columns, from: number, to: number): Plugs['taper'] {
  const cone = fitCone(...wall);
  if (cone.status !== 'ok') return null;
  const axis = axisOf(cone.axis);
  if (axis === null) return null;
  const slope = Math.sign(cone.axis.direction[2]) * Math.tan(cone.halfAngle);
  const at = (z: number) => {
    const along = (z - cone.axis.point[2]) * Math.hypot(1, axis.leanX, axis.leanY);
    return cone.diameter + 2 * slope * along;
  };
  return { axis, from: at(from), to: at(to), range: cone.deviation.range };
}
