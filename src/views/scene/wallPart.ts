/** The wall in the scene: one mesh, refilled in place as it rolls. */
import {
  BufferAttribute,
  BufferGeometry,
  type DataTexture,
  DynamicDrawUsage,
  Mesh,
  ShaderMaterial,
  Sphere,
  Vector2,
  Vector3,
  Vector4,
} from 'three';
import { colourRamp, levelColours, paletteOf, type Theme } from '../../figures/colour.ts';
import { bendWall, type WallMesh, wallMesh } from '../../figures/mesh.ts';
import type { PieceFigure } from '../../figures/piece.ts';
import { fillRamp, rampTexture } from './ramp.ts';
import { raw } from './raw.ts';
import { MOST_KEEPOUTS, MOST_LEVELS, RAMP_TEXELS, WALL_FRAGMENT, WALL_VERTEX } from './shaders.ts';

export interface WallPart {
  readonly mesh: Mesh<BufferGeometry, ShaderMaterial>;
  readonly arrays: WallMesh;
  /** Takes the figures of another evaluation of the same mesh size. */
  dress(piece: PieceFigure, theme: Theme): void;
  /** Whether the edges of the metal to take off are drawn. */
  edge(piece: PieceFigure, shown: boolean): void;
  /** Whether the lines of equal wear are drawn. */
  contour(piece: PieceFigure, shown: boolean): void;
  bend(piece: PieceFigure, roll: number, exaggeration: number): void;
  dispose(): void;
}

export function makeWall(piece: PieceFigure): WallPart {
  const arrays = wallMesh(piece.shape);
  const geometry = new BufferGeometry();
  const position = new BufferAttribute(arrays.position, 3).setUsage(DynamicDrawUsage);
  const normal = new BufferAttribute(arrays.normal, 3).setUsage(DynamicDrawUsage);
  const count = arrays.position.length / 3;
  const deviation = new BufferAttribute(new Float32Array(count), 1);
  const doubt = new BufferAttribute(new Float32Array(count), 1);
  const give = new BufferAttribute(new Float32Array(count), 1);
  const place = new BufferAttribute(arrays.place, 2);
  geometry.setAttribute('position', position);
  geometry.setAttribute('normal', normal);
  geometry.setAttribute('deviation', deviation);
  geometry.setAttribute('doubt', doubt);
  geometry.setAttribute('give', give);
  geometry.setAttribute('place', place);
  // The ray that looks for what is pointed at reads places from here.
  geometry.setAttribute('uv', place);
  geometry.setIndex(new BufferAttribute(arrays.index, 1));
  const material = new ShaderMaterial({
    vertexShader: WALL_VERTEX,
    fragmentShader: WALL_FRAGMENT,
    uniforms: wallUniforms(),
  });
  const mesh = new Mesh(geometry, material);
  mesh.frustumCulled = false;
  return {
    mesh,
    arrays,
    dress(next, theme) {
      const { shape } = next;
      deviation.copyArray(shape.deviation).needsUpdate = true;
      doubt.copyArray(shape.doubt).needsUpdate = true;
      give.copyArray(shape.give).needsUpdate = true;
      for (let i = 0; i < count; i++) {
        arrays.place[2 * i + 1] = (Math.floor(i / (shape.columns + 1)) / shape.rows) * shape.length;
      }
      place.needsUpdate = true;
      const reach = Math.PI * shape.radius + shape.length;
      geometry.boundingSphere = new Sphere(new Vector3(), 2 * reach);
      paintWall(material, next, theme);
    },
    edge({ about }, shown) {
      material.uniforms.wanted!.value = shown && about === 'target' ? 1 : 0;
    },
    contour({ steps }, shown) {
      material.uniforms.count!.value = shown ? Math.min(MOST_LEVELS, steps.levels.length) : 0;
    },
    bend({ shape }, roll, exaggeration) {
      bendWall(shape, roll, exaggeration, arrays);
      position.needsUpdate = true;
      normal.needsUpdate = true;
    },
    dispose() {
      geometry.dispose();
      (material.uniforms.ramp!.value as DataTexture).dispose();
      material.dispose();
    },
  };
}

const blanks = (n: number) => Array.from({ length: n }, () => new Vector3());

function wallUniforms() {
  return {
    step_: { value: 1 },
    first: { value: 0 },
    count: { value: 0 },
    wanted: { value: 0 },
    ramp: { value: rampTexture() },
    rampRange: { value: new Vector2(-1, 1) },
    lines: { value: blanks(MOST_LEVELS) },
    ink: { value: new Vector3() },
    ground: { value: new Vector3() },
    hole: { value: new Vector3() },
    unknown: { value: new Vector3() },
    radius: { value: 1 },
    pixel: { value: 1 },
    keepouts: { value: Array.from({ length: MOST_KEEPOUTS }, () => new Vector4()) },
    holes: { value: new Array<number>(MOST_KEEPOUTS).fill(0) },
    keepoutCount: { value: 0 },
    seats: { value: new Vector4(-1, -1, -1, -1) },
    cursor: { value: new Vector3() },
    half_: { value: 0 },
    away: { value: 0 },
    middle: { value: 0 },
  };
}

function paintWall(material: ShaderMaterial, piece: PieceFigure, theme: Theme): void {
  const { steps, shape, keepouts, seatEdges } = piece;
  const palette = paletteOf(theme);
  const set = (name: string, value: unknown) => {
    material.uniforms[name]!.value = value;
  };
  const padded = (colours: readonly string[], n: number) =>
    Array.from({ length: n }, (_, i) => raw(colours[i] ?? palette.paper));
  set('step_', steps.step);
  set('first', Math.round((steps.levels[0] ?? 0) / steps.step));
  const { from, to, colours } = colourRamp(steps, theme, RAMP_TEXELS);
  fillRamp(material.uniforms.ramp!.value as DataTexture, colours);
  set('rampRange', new Vector2(from, to));
  set('lines', padded(levelColours(steps, theme), MOST_LEVELS));
  set('ink', raw(palette.ink));
  set('ground', raw(palette.ground));
  set('hole', holeColour(theme));
  set('unknown', raw(palette.unknown));
  set('radius', shape.radius);
  for (const [name, value] of Object.entries(keepoutUniforms(keepouts))) set(name, value);
  const [a = -1, b = -1, c = -1, d = -1] = seatEdges;
  set('seats', new Vector4(a, b, c, d));
}

/** What a hole through the metal looks like: dark on every theme. */
export function holeColour(theme: Theme): Vector3 {
  const { ink, ground } = paletteOf(theme);
  return raw(theme === 'dark' ? ground : ink).multiplyScalar(theme === 'dark' ? 0.45 : 1);
}

/** Places to keep off, as the paint takes them. */
export function keepoutUniforms(keepouts: PieceFigure['keepouts']) {
  const shown = keepouts.slice(0, MOST_KEEPOUTS);
  const vectors = shown.map((k) => new Vector4(k.phi, k.from, k.to, k.half));
  while (vectors.length < MOST_KEEPOUTS) vectors.push(new Vector4(0, 0, 1, 1));
  return {
    keepouts: vectors,
    holes: vectors.map((_, i) => (shown[i]?.hole ? 1 : 0)),
    keepoutCount: shown.length,
  };
}
