/** Bushings and the pin, seated in the bore while it is a hole: one mesh, the bushings cut with the piece. */
import { BufferAttribute, BufferGeometry, DoubleSide, Mesh, ShaderMaterial, Vector3 } from 'three';
import { paletteOf, type Theme } from '../../figures/colour.ts';
import type { Fit } from '../../figures/fit.ts';
import type { BendUniforms } from './bendShader.ts';
import { FIT_FRAGMENT, FIT_VERTEX } from './fitShaders.ts';
import { raw } from './raw.ts';

export interface FitPart {
  readonly mesh: Mesh<BufferGeometry, ShaderMaterial>;
  dress(theme: Theme): void;
  /** @param length of the bore, mm; null shows nothing */
  draw(fit: Fit | null, length: number): void;
  /** Depths of the pin's ends, for whoever frames the piece; none where there is no pin to be seen. */
  ends(): readonly number[];
  dispose(): void;
}

/** Steps round. */
const ROUND = 96;
/** Most bushings drawn; a bore holds two at the most. */
const BUSHINGS = 4;
/** How far the pin stands out of either face, in its own radii, and the chamfer of its ends. */
const PROUD = 0.3;
const CHAMFER = 0.08;

/** One edge of a strip. */
interface Edge {
  /** mm */
  readonly radius: number;
  readonly z: number;
}

interface Strip {
  readonly from: Edge;
  readonly to: Edge;
  /** Out from the axis, and out of face A. */
  readonly normal: readonly [radial: number, axial: number];
  /** 0 bushing, 1 pin. */
  readonly part: 0 | 1;
}

const STRIPS = 4 * BUSHINGS + 5;
const CAPS = 2 * BUSHINGS;
const CORNERS = STRIPS * 2 * (ROUND + 1) + CAPS * 4;

export function makeFit(shared: BendUniforms): FitPart {
  const geometry = new BufferGeometry();
  const place = new BufferAttribute(new Float32Array(4 * CORNERS), 4);
  const facing = new BufferAttribute(new Float32Array(4 * CORNERS), 4);
  geometry.setAttribute('place', place);
  geometry.setAttribute('facing', facing);
  geometry.setIndex(new BufferAttribute(indices(), 1));
  const material = new ShaderMaterial({
    vertexShader: FIT_VERTEX,
    fragmentShader: FIT_FRAGMENT,
    side: DoubleSide,
    uniforms: {
      ...shared,
      bushing: { value: new Vector3() },
      pin: { value: new Vector3() },
      ink: { value: new Vector3() },
    },
  });
  const mesh = new Mesh(geometry, material);
  mesh.frustumCulled = false;
  let ends: number[] = [];
  return {
    mesh,
    dress(theme) {
      const { bossCut, ground, inkSoft, ink } = paletteOf(theme);
      material.uniforms.bushing!.value = raw(bossCut).lerp(raw(ground), 0.55);
      material.uniforms.pin!.value = raw(inkSoft).lerp(raw(ground), 0.35);
      material.uniforms.ink!.value = raw(ink);
    },
    draw(fit, length) {
      mesh.visible = fit !== null;
      ends = [];
      if (fit === null) return;
      if (fit.pin !== null) ends = [-PROUD * fit.pin, length + PROUD * fit.pin];
      fill(fit, ends, place, facing);
      place.needsUpdate = true;
      facing.needsUpdate = true;
    },
    ends: () => (mesh.visible ? ends : []),
    dispose() {
      geometry.dispose();
      material.dispose();
    },
  };
}

/** Strips round the axis, then the two faces of each bushing where it is cut. */
function indices(): Uint32Array {
  const out: number[] = [];
  for (let strip = 0; strip < STRIPS; strip++) {
    for (let i = 0; i < ROUND; i++) {
      const a = 2 * (strip * (ROUND + 1) + i);
      out.push(a, a + 1, a + 2, a + 2, a + 1, a + 3);
    }
  }
  for (let cap = 0; cap < CAPS; cap++) {
    const a = STRIPS * 2 * (ROUND + 1) + 4 * cap;
    out.push(a, a + 1, a + 2, a + 2, a + 1, a + 3);
  }
  return Uint32Array.from(out);
}

function stripsOf({ bushings, pin }: Fit, [near = 0, far = 0]: readonly number[]): Strip[] {
  const strip = (
    from: readonly [number, number],
    to: readonly [number, number],
    normal: Strip['normal'],
    part: 0 | 1,
  ): Strip => ({
    from: { radius: from[0], z: from[1] },
    to: { radius: to[0], z: to[1] },
    normal,
    part,
  });
  const tubes = bushings
    .slice(0, BUSHINGS)
    .flatMap(({ from, to, inside, outside }) => [
      strip([inside, from], [outside, from], [0, 1], 0),
      strip([inside, to], [outside, to], [0, -1], 0),
      strip([outside, from], [outside, to], [1, 0], 0),
      strip([inside, from], [inside, to], [-1, 0], 0),
    ]);
  if (pin === null) return tubes;
  const chamfer = CHAMFER * pin;
  const [slope, small] = [Math.SQRT1_2, pin - chamfer];
  return [
    ...tubes,
    strip([0, near], [small, near], [0, 1], 1),
    strip([small, near], [pin, near + chamfer], [slope, slope], 1),
    strip([pin, near + chamfer], [pin, far - chamfer], [1, 0], 1),
    strip([pin, far - chamfer], [small, far], [slope, -slope], 1),
    strip([small, far], [0, far], [0, -1], 1),
  ];
}

function fill(fit: Fit, ends: readonly number[], place: BufferAttribute, facing: BufferAttribute) {
  (place.array as Float32Array).fill(0);
  const strips = stripsOf(fit, ends);
  strips.forEach(({ from, to, normal, part }, s) => {
    for (let i = 0; i <= ROUND; i++) {
      [from, to].forEach(({ radius, z }, side) => {
        const at = 2 * (s * (ROUND + 1) + i) + side;
        // No edge is drawn where a strip ends on the axis.
        place.setXYZW(at, (2 * i) / ROUND - 1, radius, z, radius > 0 ? side : 0.5);
        facing.setXYZW(at, normal[0], normal[1], 0, part);
      });
    }
  });
  fit.bushings.slice(0, BUSHINGS).forEach(({ from, to, inside, outside }, b) => {
    [-1, 1].forEach((end, side) => {
      const first = STRIPS * 2 * (ROUND + 1) + 4 * (2 * b + side);
      [inside, outside].forEach((radius, k) => {
        [from, to].forEach((z, m) => {
          place.setXYZW(first + 2 * k + m, end, radius, z, k);
          facing.setXYZW(first + 2 * k + m, 0, 0, end, 0);
        });
      });
    });
  });
}
