/** What is written on the piece: one mesh of letters that face the eye, none of which covers another. */
import {
  BufferAttribute,
  BufferGeometry,
  DynamicDrawUsage,
  type Group,
  Mesh,
  type PerspectiveCamera,
  ShaderMaterial,
  Vector2,
  Vector3,
} from 'three';
import type { Theme } from '../../figures/colour.ts';
import type { PieceFigure } from '../../figures/piece.ts';
import type { Sign } from '../../figures/signs.ts';
import { CELL_SHAPE, type Letters } from './letters.ts';
import { MARK_FRAGMENT, MARK_VERTEX } from './shaders.ts';

export interface MarksPart {
  readonly mesh: Mesh<BufferGeometry, ShaderMaterial>;
  dress(theme: Theme): void;
  /** Puts the signs where they stand; returns their places, x, y, z one after another. */
  place(
    piece: PieceFigure,
    signs: readonly Sign[],
    stance: { readonly roll: number; readonly exaggeration: number },
  ): number[];
  /** Leaves out what is hidden from the eye, and what would cover something weightier; in a picture of this size. */
  arrange(camera: PerspectiveCamera, group: Group, width: number, height: number): void;
  /** Where the sign of the cut stands, in the piece's own coordinates; null where it is not shown. */
  knob(): Vector3 | null;
  dispose(): void;
}

/** A picture lower than this has room for 12, 3, 6 and 9 alone, and small. */
export const SMALL_PICTURE = 250;

/** Least height of a cell, CSS pixels: letters fill two thirds of it, and in the sun none is smaller than 18. */
const LEAST = { usual: 18, sunlight: 27 } as const;
const SMALLER = 0.75;

const MOST = 64;
const STANDING = [0, 0, 0] as const;

interface Placed {
  readonly sign: Sign;
  readonly at: Vector3;
  readonly outward: Vector3;
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
  const kept_ = attribute('kept_', 1);
  const index = Array.from({ length: MOST }, (_, i) =>
    [0, 1, 2, 2, 1, 3].map((k) => 4 * i + k),
  ).flat();
  geometry.setIndex(index);
  const material = makeMaterial(letters);
  const mesh = new Mesh(geometry, material);
  mesh.frustumCulled = false;
  let placed: Placed[] = [];
  let radius = 1;
  let length = 1;
  let bold = 1;
  let least: number = LEAST.usual;
  const heightOf: HeightOf = (sign, small) => {
    const height = sign.size * bold * (small ? SMALLER : 1);
    return sign.points ? height : Math.max(least, height);
  };
  return {
    mesh,
    dress(theme) {
      bold = theme === 'sunlight' ? 1.2 : 1;
      least = theme === 'sunlight' ? LEAST.sunlight : LEAST.usual;
    },
    place(piece, signs, { roll, exaggeration }) {
      ({ radius, length } = piece.shape);
      letters.need(signs.map(({ text }) => text));
      placed = signs.slice(0, MOST).map((sign) => {
        const { at, outward } = sign.stand(roll, exaggeration);
        return { sign, at: new Vector3(...at), outward: new Vector3(...outward) };
      });
      geometry.setDrawRange(0, 6 * placed.length);
      placed.forEach(({ sign, at, outward }, i) => {
        const [wx, wy, wz] = sign.points ? outward.toArray() : STANDING;
        const cell = letters.cellOf(sign.text);
        for (let k = 0; k < 4; k++) {
          const [x, y] = [k % 2, Math.floor(k / 2)];
          centre.setXYZ(4 * i + k, at.x, at.y, at.z);
          axis.setXYZ(4 * i + k, wx, wy, wz);
          uv.setXY(4 * i + k, cell.u + x * cell.width, cell.v + y * cell.height);
        }
      });
      for (const one of [centre, axis, uv]) one.needsUpdate = true;
      return placed.flatMap(({ at }) => at.toArray());
    },
    arrange(camera, group, width, height) {
      const small = height < SMALL_PICTURE;
      (material.uniforms.screen!.value as Vector2).set(width, height);
      const kept = keptOf(placed, {
        ...{ camera, group, radius, length, width, height, heightOf, small },
      });
      placed.forEach(({ sign }, i) => {
        const high = heightOf(sign, small);
        for (let k = 0; k < 4; k++) {
          const [x, y] = [k % 2, Math.floor(k / 2)];
          corner.setXY(4 * i + k, (x - 0.5) * high * CELL_SHAPE, (y - 0.5) * high);
          kept_.setX(4 * i + k, kept.has(sign) ? 1 : 0);
        }
      });
      corner.needsUpdate = true;
      kept_.needsUpdate = true;
    },
    knob: () => placed.find(({ sign }) => sign.text === 'knob')?.at ?? null,
    dispose() {
      geometry.dispose();
      material.dispose();
    },
  };
}

function makeMaterial(letters: Letters): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: MARK_VERTEX,
    fragmentShader: MARK_FRAGMENT,
    uniforms: {
      letters: { value: letters.texture },
      screen: { value: new Vector2(1, 1) },
    },
    transparent: true,
    // What is hidden is left out by `arrange`, whole: a figure half swallowed by the metal would be misread.
    depthTest: false,
    depthWrite: false,
  });
}

/** Height of a sign's cell, CSS pixels, in a small picture or in a large one. */
type HeightOf = (sign: Sign, small: boolean) => number;

interface Picture {
  readonly camera: PerspectiveCamera;
  readonly group: Group;
  readonly radius: number;
  readonly length: number;
  readonly width: number;
  readonly height: number;
  readonly heightOf: HeightOf;
  readonly small: boolean;
}

/** Widths of a letter and of the room around a text, in heights of its cell. */
const LETTER = 0.3;
const AROUND = 0.16;

function keptOf(placed: readonly Placed[], picture: Picture): Set<Sign> {
  const { camera, group, width, height, heightOf, small } = picture;
  const eye = group.worldToLocal(camera.position.clone());
  const kept = new Set<Sign>();
  const boxes: { x: number; y: number; w: number; h: number }[] = [];
  for (const { sign, at, outward } of [...placed].sort((a, b) => b.sign.weight - a.sign.weight)) {
    if (small && sign.minor) continue;
    if (!SEEN[sign.on](at, outward, eye, picture)) continue;
    const point = group.localToWorld(at.clone()).project(camera);
    const shape = sign.points || sign.text === 'knob';
    const high = heightOf(sign, small);
    const h = high * (shape ? 0.6 : 0.78);
    const w = shape ? h : high * (sign.text.length * LETTER + AROUND);
    const box = { x: (point.x * width) / 2, y: (point.y * height) / 2, w, h };
    const covers = boxes.some(
      (one) =>
        Math.abs(one.x - box.x) < (one.w + box.w) / 2 &&
        Math.abs(one.y - box.y) < (one.h + box.h) / 2,
    );
    if (covers) continue;
    boxes.push(box);
    kept.add(sign);
  }
  return kept;
}

type Seen = (at: Vector3, outward: Vector3, eye: Vector3, picture: Picture) => boolean;

/** Whether the eye sees what a sign stands on; all in the piece's own coordinates. */
const SEEN: Readonly<Record<Sign['on'], Seen>> = {
  // The wall looks at the eye, and the eye sees it through the mouth of the hole.
  wall(at, outward, eye, { group, radius, length }) {
    const toEye = eye.clone().sub(at).normalize();
    if (-toEye.dot(outward) < 0.12) return false;
    if (group.userData.closed !== true) return true;
    if (eye.z <= 0 && eye.z >= -length) return false;
    const end = eye.z > 0 ? 0 : -length;
    const mouth = at.clone().addScaledVector(toEye, (end - at.z) / toEye.z);
    return Math.hypot(mouth.x, mouth.y) < 0.97 * radius;
  },
  // Rolled out, the rim is seen from wherever the wall is.
  rim(at, outward, eye, { group }) {
    if (group.userData.roll < 0.5) return eye.z > 0;
    return eye.clone().sub(at).normalize().dot(outward) < 0.2;
  },
  'cut face'(at, _, eye, { group }) {
    const away = group.userData.away as number | null;
    if (away === null) return false;
    const toEye = eye.clone().sub(at);
    return toEye.x * Math.sin(away) + toEye.y * Math.cos(away) > 0;
  },
};
