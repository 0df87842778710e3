/** Where things stand on the bent wall: readings, clock marks, the load. Coordinates as in bend.ts. */
import { bend, fromMiddle } from './bend.ts';
import type { Vector } from './framing.ts';
import { type WallShape, wearAt } from './mesh.ts';

export interface Stand {
  readonly at: Vector;
  /** Unit vector away from the bore's axis. */
  readonly outward: Vector;
}

/** A place on the drawn wall, wear exaggerated, and which way the metal lies. */
export function standOn(
  shape: WallShape,
  theta: number,
  z: number,
  roll: number,
  exaggeration: number,
): Stand {
  const { cut, radius } = shape;
  const phi = fromMiddle(theta, cut);
  const { at, outward } = bend(phi, radius, cut, roll);
  const lift = exaggeration * wearAt(shape, phi, z);
  return {
    at: [at.x + lift * outward.x, at.y + lift * outward.y, -z],
    outward: [outward.x, outward.y, 0],
  };
}

export interface ClockMark {
  /** `12`, `3`; `load` for the load. */
  readonly text: string;
  /** Radians from the middle of the map; the hour at the cut is there twice. */
  readonly phi: number;
  readonly quarter: boolean;
}

/** The hours as they stand round the rim, the one at the cut at both ends of the map. */
export function clockMarks(cut: number): ClockMark[] {
  const marks: ClockMark[] = [];
  for (let hour = 1; hour <= 12; hour++) {
    const phi = fromMiddle((hour * Math.PI) / 6, cut);
    const mark = { text: String(hour), phi, quarter: hour % 3 === 0 };
    marks.push(mark);
    if (Math.abs(Math.abs(phi) - Math.PI) < 1e-6) marks.push({ ...mark, phi: -phi });
  }
  return marks;
}

/**
 * Where a mark of the rim stands: on the middle of the rim's metal in front of the hole, above the rim at the map.
 * @param share of the metal's thickness from the wall outwards at roll 0
 * @param above how far above the rim at roll 1, mm
 */
export function standAtRim(
  shape: WallShape,
  phi: number,
  metal: number,
  share: number,
  above: number,
  roll: number,
): Stand {
  const { at, outward } = bend(phi, shape.radius, shape.cut, roll);
  const out = share * metal * (1 - roll);
  return {
    at: [at.x + out * outward.x, at.y + out * outward.y, above * roll],
    outward: [outward.x, outward.y, 0],
  };
}
