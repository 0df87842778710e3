/** Everything that is written on the piece in three dimensions: what, where, and what gives way to what. */
import { fromMiddle } from './bend.ts';
import type { Vector } from './framing.ts';
import { type WallShape, wearAt } from './mesh.ts';
import type { PieceFigure } from './piece.ts';
import { clockMarks, standAtRim, standOn } from './pins.ts';

export interface Sign {
  readonly text: string;
  /** Clock position that it speaks of, radians from the middle of the map. */
  readonly of: number;
  /** What it stands on, and with that from where it can be seen. */
  readonly on: 'rim' | 'wall' | 'cut face';
  /** Height of its cell, CSS pixels. */
  readonly size: number;
  /** An arrow, which points the way that the metal lies. */
  readonly points: boolean;
  /** Left out where the picture is small. */
  readonly minor: boolean;
  /** The heavier of two that would cover one another stays. */
  readonly weight: number;
  /** Where it stands and which way the metal lies there, at a roll and a factor on wear. */
  stand(roll: number, exaggeration: number): { readonly at: Vector; readonly outward: Vector };
}

/** Heights of a cell, CSS pixels; letters fill two thirds of it. */
const QUARTER = 26;
const HOUR = 20;
const ZONE = 27;

/** Room that a sign of the cut is kept free of, radians. */
const BESIDE_CUT = 0.16;

interface Shown {
  readonly zones: boolean;
  /** Something stands in the hole, before the wall. */
  readonly filled: boolean;
  /** Clock position of the half that is taken off; null: whole. */
  readonly away: number | null;
  readonly roll: number;
}

export function signsOf(piece: PieceFigure, shown: Shown): Sign[] {
  const { away, roll } = shown;
  const onWall = !(shown.filled && roll < 0.1);
  return [
    ...hours(piece, roll),
    ...load(piece, roll),
    face(piece),
    ...(away === null ? [knob(piece)] : []),
    ...(onWall || away !== null ? depths(piece, away) : []),
    ...(onWall && shown.zones ? zoneSigns(piece) : []),
  ];
}

type RimPlace = Pick<Sign, 'text' | 'of' | 'size' | 'weight'> & {
  readonly phi: number;
  readonly share: number;
  readonly above: number;
};

function onRim({ shape, metal }: PieceFigure, place: RimPlace, rest: Partial<Sign> = {}): Sign {
  const { phi, share, above, ...sign } = place;
  return {
    ...sign,
    on: 'rim',
    points: false,
    minor: false,
    stand: (roll) => standAtRim(shape, phi, metal, share, above, roll),
    ...rest,
  };
}

const isThin = ({ shape, metal }: PieceFigure) => metal < 0.3 * shape.radius;

/** Hours on the rim's metal, outside it where that is too thin. */
function hours(piece: PieceFigure, roll: number): Sign[] {
  const { shape, metal } = piece;
  const thin = isThin(piece);
  const outside = 1 + (0.14 * shape.radius) / metal;
  // At the cut the grip stands on the rim, and the hour makes room for it.
  const shareAt = (phi: number) => (Math.PI - Math.abs(phi) < 0.1 ? 0.76 : 0.6);
  return (
    clockMarks(shape.cut)
      // As a hole both ends of the cut are one place, and its hour is written once.
      .filter(({ phi }) => roll > 0.01 || phi < Math.PI - 1e-6)
      .map(({ text, phi, quarter }) => {
        const [size, weight] = quarter ? [QUARTER, 100] : [HOUR, 50];
        const share = thin ? outside : shareAt(phi);
        const place = { text, phi, of: phi, share, above: 0.16 * shape.radius, size, weight };
        return onRim(piece, place, { minor: !quarter });
      })
  );
}

/**
 * The arrow points where the load pulls. At the map that is into the paper, so there it points down at the rim;
 * half-way it is too small to be seen turning over.
 */
function load(piece: PieceFigure, roll: number): Sign[] {
  const { shape, metal, load: phi } = piece;
  if (phi === null) return [];
  const { radius } = shape;
  const outside = (isThin(piece) ? 0.36 : 0.17) * radius;
  const at = { of: phi, share: 1 + outside / metal, above: 0.4 * radius };
  // Its word stands on the side where the map has more room.
  const side = (phi > 0 ? -0.3 : 0.3) * (radius / (radius + 0.5 * at.share * metal));
  const arrow = onRim(
    piece,
    { ...at, text: 'arrow', phi, size: 30 * Math.sqrt(Math.abs(1 - 2 * roll)), weight: 110 },
    { points: true },
  );
  const down: Vector = [0, 0, -1];
  const turned = { ...arrow, stand: () => ({ ...arrow.stand(roll, 1), outward: down }) };
  const word = onRim(
    piece,
    { ...at, text: 'load', phi: phi + side, size: HOUR, weight: 80 },
    { minor: true },
  );
  return [roll < 0.5 ? arrow : turned, word];
}

/** Which face one looks in at, between two hours of the upper left. */
function face(piece: PieceFigure): Sign {
  const phi = fromMiddle((21 * Math.PI) / 12, piece.shape.cut);
  const share = isThin(piece) ? 1 + (0.3 * piece.shape.radius) / piece.metal : 0.78;
  const above = 0.16 * piece.shape.radius;
  const place = { text: 'face A', phi, of: phi, share, above, size: HOUR, weight: 10 };
  return onRim(piece, place, { minor: true });
}

/** Where the grip of the cut stands: on the rim, clear of the hole as it is drawn; at the map left of its first hour. */
function knob(piece: PieceFigure): Sign {
  const { shape, metal } = piece;
  const { radius } = shape;
  const above = 0.16 * radius;
  const place = {
    text: 'knob',
    of: -Math.PI,
    phi: -Math.PI,
    share: 0,
    above,
    size: 26,
    weight: 120,
  };
  return onRim(piece, place, {
    stand: (roll, exaggeration) => {
      const hole = exaggeration * wearAt(shape, -Math.PI, 0);
      const share = Math.min(1, Math.max(0.27, (hole + 0.17 * radius) / metal));
      return standAtRim(shape, -Math.PI - 0.2 * roll, metal, share, above, roll);
    },
  });
}

/** Where the scale of depths runs, radians from the middle of the map: along the cut, or the lower edge of a half. */
export function scaleAt({ shape }: PieceFigure, away: number | null): number {
  if (away === null) return -Math.PI;
  const ends = [away + Math.PI / 2, away - Math.PI / 2];
  const lower = ends.sort((a, b) => Math.cos(a) - Math.cos(b))[0]!;
  return fromMiddle(lower, shape.cut);
}

/** Figures of the depth scale: beside the cut on the wall, or on the metal of a half's cut face. */
function depths({ shape, depthTicks, metal }: PieceFigure, away: number | null): Sign[] {
  const at = scaleAt({ shape } as PieceFigure, away);
  const phi = at - (away === null ? BESIDE_CUT : 0);
  const out = away === null ? -0.02 * shape.radius : Math.min(0.5 * metal, 0.2 * shape.radius);
  return depthTicks.map(({ z, text }, i) => ({
    text,
    of: at,
    on: away === null ? 'wall' : 'cut face',
    size: HOUR,
    points: false,
    minor: i % 2 === 1,
    weight: 30 - i / 100,
    stand: (roll, exaggeration) => onWall(shape, phi, z, out, roll, exaggeration),
  }));
}

function onWall(
  shape: WallShape,
  phi: number,
  z: number,
  out: number,
  roll: number,
  exaggeration: number,
) {
  const { at, outward } = standAtRim(shape, phi, 1, 0, 0, roll);
  const lift = exaggeration * wearAt(shape, phi, z) + out;
  const place: Vector = [at[0] + lift * outward[0], at[1] + lift * outward[1], -z];
  return { at: place, outward };
}

/** Signed peaks of the zones, as on the map. */
function zoneSigns({ shape, zones }: PieceFigure): Sign[] {
  return zones.map(({ text, theta, z, weight }) => ({
    text,
    of: fromMiddle(theta, shape.cut),
    on: 'wall',
    size: ZONE,
    points: false,
    minor: false,
    weight: 60 + weight / (1 + weight),
    stand: (roll, exaggeration) => standOn(shape, theta, z, roll, exaggeration),
  }));
}
