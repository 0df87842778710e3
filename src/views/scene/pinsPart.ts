/** Readings as pins: a head where the gauge touched, a stem leaning the way that it came in. */
import {
  BufferAttribute,
  BufferGeometry,
  CylinderGeometry,
  IcosahedronGeometry,
  InstancedBufferAttribute,
  InstancedMesh,
  Matrix4,
  OctahedronGeometry,
  Quaternion,
  ShaderMaterial,
  TorusGeometry,
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
  show(readings: boolean): void;
  place(
    piece: PieceFigure,
    roll: number,
    exaggeration: number,
    hidden: (theta: number) => boolean,
  ): void;
  dispose(): void;
}

/** Room for every pin that a figure may have: its most, suspects besides, and the outer ends of wall readings. */
const MOST = 1600;
const UP = new Vector3(0, 1, 0);
const NOWHERE = new Matrix4().makeScale(0, 0, 0);

/** Heads: a ball for a reading, a diamond for one in doubt, a ring where the next one is wanted. */
const [BALL, DIAMOND, RING, EVERY] = [0, 1, 2, -1];

interface Pin {
  readonly theta: number;
  readonly z: number;
  readonly kind: number;
  /** On the outside of the boss: the other end of a wall reading. */
  readonly outside: boolean;
}

/** Gauges come in by face A: their stems lean that way by so much for each length towards the middle. */
const LEAN = 0.7;

export function makePins(): PinsPart {
  const geometry = pinShape();
  const tint = new InstancedBufferAttribute(new Float32Array(3 * MOST), 3);
  const kind = new InstancedBufferAttribute(new Float32Array(MOST), 1);
  geometry.setAttribute('tint', tint);
  geometry.setAttribute('kind', kind);
  const material = new ShaderMaterial({ vertexShader: PIN_VERTEX, fragmentShader: PIN_FRAGMENT });
  const mesh = new InstancedMesh(geometry, material, MOST);
  mesh.frustumCulled = false;
  let pins: Pin[] = [];
  let bold = 1;
  return {
    mesh,
    dress(piece, theme) {
      const palette = paletteOf(theme);
      const tints = [raw(palette.ink), raw(palette.copperText), raw(palette.tealText)];
      bold = theme === 'sunlight' ? 1.4 : 1;
      pins = pinsOf(piece);
      mesh.count = pins.length;
      pins.forEach((pin, i) => {
        tint.setXYZ(i, ...tints[pin.kind]!.toArray());
        kind.setX(i, pin.kind);
      });
      tint.needsUpdate = true;
      kind.needsUpdate = true;
    },
    show(readings) {
      mesh.visible = readings && pins.length > 0;
    },
    place({ shape, metal }, roll, exaggeration, hidden) {
      const matrix = new Matrix4();
      const turn = new Quaternion();
      const size = new Vector3();
      pins.forEach((pin, i) => {
        const { at, outward } = standOn(shape, pin.theta, pin.z, roll, exaggeration);
        const foot = pin.outside ? onOutside(shape, pin, roll, metal) : at;
        const way = new Vector3(...outward);
        if (!pin.outside)
          way
            .negate()
            .addScaledVector(new Vector3(0, 0, 1), LEAN)
            .normalize();
        turn.setFromUnitVectors(UP, way);
        size.setScalar(bold * shape.radius * (pin.kind === BALL ? 1 : 1.4));
        const gone = hidden(pin.theta);
        mesh.setMatrixAt(i, gone ? NOWHERE : matrix.compose(new Vector3(...foot), turn, size));
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

/** Where a gauge stood on the outside of the boss. */
function onOutside(
  shape: PieceFigure['shape'],
  { theta, z }: Pin,
  roll: number,
  out: number,
): readonly [number, number, number] {
  const { at, outward } = standOn(shape, theta, z, roll, 0);
  return [at[0] + out * outward[0], at[1] + out * outward[1], at[2]];
}

/** Readings that were taken, then where the next one is wanted. */
function pinsOf({ marks, next }: PieceFigure): Pin[] {
  const wanted = next.map((place) => ({ ...place, kind: RING, outside: false }));
  const taken = marks.flatMap(({ theta, z, suspect, instrument }): Pin[] => {
    const pin = { theta, z, kind: suspect ? DIAMOND : BALL, outside: false };
    return instrument === 'wall' ? [pin, { ...pin, outside: true }] : [pin];
  });
  return [...taken.slice(0, MOST - wanted.length), ...wanted];
}

/** Pins for a bore of radius 1: every head on the origin, the stem along +y. */
function pinShape(): BufferGeometry {
  const parts = [
    { head: BALL, shape: new IcosahedronGeometry(0.026, 1) },
    { head: DIAMOND, shape: new OctahedronGeometry(0.036, 0) },
    {
      head: RING,
      shape: new TorusGeometry(0.034, 0.009, 5, 14).rotateX(Math.PI / 2).toNonIndexed(),
    },
    {
      head: EVERY,
      shape: new CylinderGeometry(0.008, 0.006, 0.15, 5, 1, true)
        .translate(0, 0.075, 0)
        .toNonIndexed(),
    },
  ];
  const merged = new BufferGeometry();
  for (const name of ['position', 'normal']) {
    const arrays = parts.map(({ shape }) => shape.getAttribute(name).array as Float32Array);
    const all = new Float32Array(arrays.reduce((sum, one) => sum + one.length, 0));
    let at = 0;
    for (const one of arrays) {
      all.set(one, at);
      at += one.length;
    }
    merged.setAttribute(name, new BufferAttribute(all, 3));
  }
  const heads = parts.flatMap(({ head, shape }) =>
    new Array<number>(shape.getAttribute('position').count).fill(head),
  );
  merged.setAttribute('head', new BufferAttribute(Float32Array.from(heads), 1));
  for (const { shape } of parts) shape.dispose();
  return merged;
}
