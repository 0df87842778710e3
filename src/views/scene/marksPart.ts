/** Clock marks round the rim and the arrow of the load: one mesh of letters that face the eye. */
import {
  BufferAttribute,
  BufferGeometry,
  DynamicDrawUsage,
  Mesh,
  ShaderMaterial,
  Vector2,
} from 'three';
import type { Vector } from '../../figures/framing.ts';
import type { PieceFigure } from '../../figures/piece.ts';
import { clockMarks, standAtRim } from '../../figures/pins.ts';
import { CELL_SHAPE, cellOf, type Letters } from './letters.ts';
import { MARK_FRAGMENT, MARK_VERTEX } from './shaders.ts';

export interface MarksPart {
  readonly mesh: Mesh<BufferGeometry, ShaderMaterial>;
  /** Puts the marks where they stand at a roll; returns their places, x, y, z one after another. */
  place(piece: PieceFigure, roll: number, hidden: (phi: number) => boolean): number[];
  /** Fits the letters to a picture of this size, CSS pixels. */
  fit(width: number, height: number): void;
  dispose(): void;
}

/** A picture lower than this has room for 12, 3, 6 and 9 alone, and small. */
export const SMALL_PICTURE = 250;

/** Twelve hours, the one at the cut twice, the load and its arrow. */
const MOST = 15;
/** Heights of a cell, CSS pixels; letters fill two thirds of it. */
const QUARTER = 26;
const HOUR = 20;

const STANDING = [0, 0, 0] as const;

/**
 * The arrow points where the load pulls. At the map that is into the paper, so there it points down at the rim;
 * half-way it is too small to be seen turning over.
 */
function arrowWay(outward: Vector, roll: number): Vector {
  return roll < 0.5 ? outward : [0, 0, -1];
}
const arrowSize = (roll: number) => 30 * Math.sqrt(Math.abs(1 - 2 * roll));

interface Sign {
  readonly text: string;
  readonly phi: number;
  /** Clock position that it speaks of, where it stands beside it. */
  readonly of?: number;
  readonly size: number;
  readonly share: number;
  readonly above: number;
  readonly points: boolean;
  /** Left out where the picture is small. */
  readonly minor: boolean;
}

export function makeMarks(letters: Letters): MarksPart {
  const geometry = new BufferGeometry();
  const attribute = (name: string, size: number) => {
    const made = new BufferAttribute(new Float32Array(4 * MOST * size), size);
    geometry.setAttribute(name, made.setUsage(DynamicDrawUsage));
    return made;
  };
  const centre = attribute('centre', 3);
  const axis = attribute('axis', 3);
  const corner = attribute('corner', 2);
  const uv = attribute('uv_', 2);
  const minor = attribute('minor', 1);
  const index = Array.from({ length: MOST }, (_, i) =>
    [0, 1, 2, 2, 1, 3].map((k) => 4 * i + k),
  ).flat();
  geometry.setIndex(index);
  const material = new ShaderMaterial({
    vertexShader: MARK_VERTEX,
    fragmentShader: MARK_FRAGMENT,
    uniforms: {
      letters: { value: letters.texture },
      screen: { value: new Vector2(1, 1) },
      sizes: { value: new Vector2(1, 1) },
      lift: { value: 1 },
    },
    transparent: true,
    depthWrite: false,
  });
  const mesh = new Mesh(geometry, material);
  mesh.frustumCulled = false;
  return {
    mesh,
    place(piece, roll, hidden) {
      const signs = signsOf(piece, roll).filter((sign) => !hidden(sign.of ?? sign.phi));
      geometry.setDrawRange(0, 6 * signs.length);
      const places: number[] = [];
      signs.forEach((sign, i) => {
        const { share, above, phi } = sign;
        const { at, outward } = standAtRim(piece.shape, phi, piece.metal, share, above, roll);
        places.push(...at);
        const [wx, wy, wz] = sign.points ? arrowWay(outward, roll) : STANDING;
        const cell = cellOf(sign.text);
        for (let k = 0; k < 4; k++) {
          const [x, y] = [k % 2, Math.floor(k / 2)];
          centre.setXYZ(4 * i + k, ...at);
          axis.setXYZ(4 * i + k, wx, wy, wz);
          corner.setXY(4 * i + k, (x - 0.5) * sign.size * CELL_SHAPE, (y - 0.5) * sign.size);
          minor.setX(4 * i + k, sign.minor ? 1 : 0);
          uv.setXY(4 * i + k, cell.u + x * cell.width, cell.v + y * cell.height);
        }
      });
      for (const one of [centre, axis, corner, uv, minor]) one.needsUpdate = true;
      material.uniforms.lift!.value = 0.3 * piece.shape.length;
      return places;
    },
    fit(width, height) {
      const small = height < SMALL_PICTURE;
      (material.uniforms.screen!.value as Vector2).set(width, height);
      (material.uniforms.sizes!.value as Vector2).set(small ? 0.75 : 1, small ? 0 : 1);
    },
    dispose() {
      geometry.dispose();
      material.dispose();
    },
  };
}

/** What is written, and where: hours on the rim's metal (outside it where that is too thin), the load outside. */
function signsOf({ shape, metal, load }: PieceFigure, roll: number): Sign[] {
  const { radius, cut } = shape;
  const thin = metal < 0.3 * radius;
  const share = thin ? 1 + (0.14 * radius) / metal : 0.6;
  const signs: Sign[] = clockMarks(cut)
    // As a hole both ends of the cut are one place, and its hour is written once.
    .filter(({ phi }) => roll > 0.01 || phi < Math.PI - 1e-6)
    .map(({ text, phi, quarter }) => ({
      text,
      phi,
      size: quarter ? QUARTER : HOUR,
      share,
      above: 0.16 * radius,
      points: false,
      minor: !quarter,
    }));
  if (load === null) return signs;
  const outside = (thin ? 0.36 : 0.17) * radius;
  const at = { share: 1 + outside / metal, above: 0.4 * radius };
  return [
    ...signs,
    { ...at, text: 'arrow', phi: load, size: arrowSize(roll), points: true, minor: false },
    {
      ...at,
      text: 'load',
      of: load,
      phi: load + beside(load, at.share * metal, radius),
      size: HOUR,
      points: false,
      minor: true,
    },
  ];
}

/** The load's word stands beside its arrow, on the side where the map has more room, as an angle. */
function beside(load: number, out: number, radius: number): number {
  return (load > 0 ? -0.3 : 0.3) * (radius / (radius + 0.5 * out));
}
