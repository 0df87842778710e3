/** Readings as pins on the wall: a head where the gauge touched, a stem leaning the way it came. */
import {
  BufferAttribute,
  BufferGeometry,
  CylinderGeometry,
  IcosahedronGeometry,
  InstancedBufferAttribute,
  InstancedMesh,
  Matrix4,
  Quaternion,
  ShaderMaterial,
  Vector3,
} from 'three';
import { paletteOf, type Theme } from '../../figures/colour.ts';
import type { PieceFigure } from '../../figures/piece.ts';
import { standOn } from '../../figures/pins.ts';
import { raw } from './raw.ts';
import { PIN_FRAGMENT, PIN_VERTEX } from './shaders.ts';

export interface PinsPart {
  readonly mesh: InstancedMesh;
  dress(piece: PieceFigure, theme: Theme): void;
  place(
    piece: PieceFigure,
    roll: number,
    exaggeration: number,
    hidden: (theta: number) => boolean,
  ): void;
  dispose(): void;
}

/** Room for every pin that a figure may have: its most, and suspects besides. */
const MOST = 1200;
const UP = new Vector3(0, 1, 0);
const NOWHERE = new Matrix4().makeScale(0, 0, 0);

export function makePins(): PinsPart {
  const geometry = pinShape();
  const tint = new InstancedBufferAttribute(new Float32Array(3 * MOST), 3);
  geometry.setAttribute('tint', tint);
  const material = new ShaderMaterial({ vertexShader: PIN_VERTEX, fragmentShader: PIN_FRAGMENT });
  const mesh = new InstancedMesh(geometry, material, MOST);
  mesh.frustumCulled = false;
  return {
    mesh,
    dress(piece, theme) {
      const palette = paletteOf(theme);
      const [plain, suspect] = [raw(palette.ink), raw(palette.copperText)];
      const wanted = raw(palette.tealText);
      const pins = pinsOf(piece);
      mesh.count = pins.length;
      for (let i = 0; i < mesh.count; i++) {
        const pin = pins[i]!;
        tint.setXYZ(i, ...(pin.wanted ? wanted : pin.suspect ? suspect : plain).toArray());
      }
      tint.needsUpdate = true;
    },
    place(piece, roll, exaggeration, hidden) {
      const matrix = new Matrix4();
      const turn = new Quaternion();
      const size = new Vector3();
      pinsOf(piece).forEach(({ theta, z, suspect, wanted }, i) => {
        const { at, outward } = standOn(piece.shape, theta, z, roll, exaggeration);
        turn.setFromUnitVectors(UP, new Vector3(...outward).negate());
        size.setScalar(piece.shape.radius * (suspect || wanted ? 1.5 : 1));
        mesh.setMatrixAt(
          i,
          hidden(theta) ? NOWHERE : matrix.compose(new Vector3(...at), turn, size),
        );
      });
      mesh.instanceMatrix.needsUpdate = true;
    },
    dispose() {
      geometry.dispose();
      material.dispose();
      mesh.dispose();
    },
  };
}

/** Readings that were taken, then where the next one is wanted. */
function pinsOf({ marks, next }: PieceFigure) {
  const wanted = next.map((place) => ({ ...place, suspect: false, wanted: true }));
  const taken = marks.slice(0, MOST - wanted.length).map((mark) => ({ ...mark, wanted: false }));
  return [...taken, ...wanted];
}

/** A pin for a bore of radius 1, its head on the origin and its stem along +y. */
function pinShape(): BufferGeometry {
  const head = new IcosahedronGeometry(0.022, 1);
  const stem = new CylinderGeometry(0.006, 0.006, 0.13, 5, 1, true)
    .translate(0, 0.065, 0)
    .toNonIndexed();
  const merged = new BufferGeometry();
  for (const name of ['position', 'normal']) {
    const parts = [head, stem].map((part) => part.getAttribute(name).array as Float32Array);
    const all = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
    all.set(parts[0]!);
    all.set(parts[1]!, parts[0]!.length);
    merged.setAttribute(name, new BufferAttribute(all, 3));
  }
  head.dispose();
  stem.dispose();
  return merged;
}
