/** All lines laid over the piece: one mesh of ribbons that keep their width on the screen and bend with it. */
import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  DynamicDrawUsage,
  Mesh,
  ShaderMaterial,
  Vector2,
  Vector3,
  Vector4,
} from 'three';
import { type Palette, paletteOf, type Theme } from '../../figures/colour.ts';
import type { Stroke, StrokeKind } from '../../figures/strokes.ts';
import type { BendUniforms } from './bendShader.ts';
import { LINE_FRAGMENT, LINE_VERTEX, MOST_STROKE_KINDS } from './lineShaders.ts';
import { raw } from './raw.ts';

export interface LinesPart {
  readonly mesh: Mesh<BufferGeometry, ShaderMaterial>;
  dress(theme: Theme): void;
  /** Takes other lines; the room for them is kept. */
  draw(strokes: readonly Stroke[], radius: number): void;
  fit(width: number, height: number): void;
  dispose(): void;
}

/** Room for so many short straight pieces; what is more is left out from the end. */
const MOST = 6000;

interface Look {
  readonly kind: StrokeKind;
  readonly colour: keyof Pick<Palette, 'ink' | 'inkSoft' | 'copperText' | 'tealText'>;
  /** CSS pixels. */
  readonly wide: number;
  /** Length of a dash and its gap in radii of the bore, and the dash's share of it; 1 is unbroken. */
  readonly period: number;
  readonly on: number;
  /** px of paper on both sides of it, so that it shows on every colour; left out: none. */
  readonly beside?: number;
}

/** No two that may lie side by side differ by colour alone. */
const LOOKS: readonly Look[] = [
  { kind: 'target', colour: 'ink', wide: 3, period: 1, on: 1 },
  { kind: 'target-side', colour: 'ink', wide: 1.1, period: 1, on: 1 },
  { kind: 'ghost', colour: 'ink', wide: 2.4, period: 0.13, on: 0.58 },
  { kind: 'plug', colour: 'ink', wide: 2, period: 1, on: 1 },
  { kind: 'average', colour: 'ink', wide: 2, period: 0.16, on: 0.65 },
  { kind: 'around', colour: 'ink', wide: 2.6, period: 0.07, on: 0.4 },
  { kind: 'reading', colour: 'ink', wide: 2, period: 1, on: 1 },
  { kind: 'doubt', colour: 'copperText', wide: 2.6, period: 0.09, on: 0.55 },
  { kind: 'path', colour: 'inkSoft', wide: 2, period: 1, on: 1 },
  { kind: 'scale', colour: 'ink', wide: 1.6, period: 1, on: 1 },
  { kind: 'cut', colour: 'ink', wide: 2.6, period: 1, on: 1 },
  { kind: 'pressed-1', colour: 'ink', wide: 1, period: 1, on: 1, beside: 1.1 },
  { kind: 'pressed-2', colour: 'ink', wide: 1.6, period: 1, on: 1, beside: 1.1 },
  { kind: 'pressed-3', colour: 'ink', wide: 2.3, period: 1, on: 1, beside: 1.1 },
  { kind: 'pressed-4', colour: 'ink', wide: 3, period: 1, on: 1, beside: 1.1 },
  { kind: 'pressed-5', colour: 'ink', wide: 3.8, period: 1, on: 1, beside: 1.1 },
  { kind: 'touch-edge', colour: 'ink', wide: 1.6, period: 0.1, on: 0.6, beside: 1 },
  { kind: 'gap', colour: 'ink', wide: 1, period: 1, on: 1, beside: 1 },
];

export function makeLines(shared: BendUniforms): LinesPart {
  const geometry = new BufferGeometry();
  const attribute = (name: string, size: number) => {
    const made = new BufferAttribute(new Float32Array(4 * MOST * size), size);
    geometry.setAttribute(name, made.setUsage(DynamicDrawUsage));
    return made;
  };
  // Three names its own attribute `position`; the ribbons have none.
  const from = attribute('from', 4);
  const to = attribute('to', 4);
  const reach = attribute('reach', 2);
  const look = attribute('look', 4);
  const index = new Uint32Array(6 * MOST);
  for (let i = 0; i < MOST; i++)
    index.set(
      [0, 1, 2, 2, 1, 3].map((k) => 4 * i + k),
      6 * i,
    );
  geometry.setIndex(new BufferAttribute(index, 1));
  geometry.setDrawRange(0, 0);
  const material = new ShaderMaterial({
    vertexShader: LINE_VERTEX,
    fragmentShader: LINE_FRAGMENT,
    side: DoubleSide,
    uniforms: {
      ...shared,
      screen: { value: new Vector2(1, 1) },
      colours: { value: Array.from({ length: MOST_STROKE_KINDS }, () => new Vector3()) },
      styles: { value: Array.from({ length: MOST_STROKE_KINDS }, () => new Vector4(1, 1, 1, 1)) },
      paper: { value: new Vector3() },
      bold: { value: 1 },
    },
  });
  const mesh = new Mesh(geometry, material);
  mesh.frustumCulled = false;
  return {
    mesh,
    dress(theme) {
      const palette = paletteOf(theme);
      LOOKS.forEach(({ colour }, i) => {
        material.uniforms.colours!.value[i] = raw(palette[colour]);
      });
      material.uniforms.paper!.value = raw(palette.ground);
      material.uniforms.bold!.value = theme === 'sunlight' ? 1.5 : 1;
    },
    draw(strokes, radius) {
      LOOKS.forEach(({ wide, period, on, beside = 0 }, i) => {
        const whole = wide + 2 * beside;
        const style = material.uniforms.styles!.value[i] as Vector4;
        style.set(whole, period * radius, on, wide / whole);
      });
      const count = fill(strokes, { from, to, reach, look }, radius);
      geometry.setDrawRange(0, 6 * count);
      mesh.visible = count > 0;
      for (const one of [from, to, reach, look]) one.needsUpdate = true;
    },
    fit(width, height) {
      (material.uniforms.screen!.value as Vector2).set(width, height);
    },
    dispose() {
      geometry.dispose();
      material.dispose();
    },
  };
}

type Filled = Readonly<Record<'from' | 'to' | 'reach' | 'look', BufferAttribute>>;

/** @returns how many straight pieces there are */
function fill(strokes: readonly Stroke[], into: Filled, radius: number): number {
  let count = 0;
  for (const { kind, knots } of strokes) {
    const style = LOOKS.findIndex((one) => one.kind === kind);
    let along = 0;
    for (let i = 0; i + 1 < knots.length && count < MOST; i++, count++) {
      const [a, b] = [knots[i]!, knots[i + 1]!];
      const length = Math.hypot(radius * (b.phi - a.phi), b.z - a.z, b.reach - a.reach);
      for (let k = 0; k < 4; k++) {
        const at = 4 * count + k;
        into.from.setXYZW(at, a.phi, a.z, a.wear, a.out);
        into.to.setXYZW(at, b.phi, b.z, b.wear, b.out);
        into.reach.setXY(at, a.reach, b.reach);
        const end = k >> 1;
        into.look.setXYZW(at, (k % 2) * 2 - 1, end, style, along + end * length);
      }
      along += length;
    }
  }
  return count;
}
