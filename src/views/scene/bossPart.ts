/** The metal around the wall in the scene. */
import {
  BufferAttribute,
  BufferGeometry,
  DynamicDrawUsage,
  Mesh,
  ShaderMaterial,
  Vector3,
} from 'three';
import { bendBoss, bossCorners, bossMesh, type Span, WHOLE } from '../../figures/boss.ts';
import { paletteOf, type Theme } from '../../figures/colour.ts';
import type { WallMesh } from '../../figures/mesh.ts';
import type { PieceFigure } from '../../figures/piece.ts';
import { raw } from './raw.ts';
import { BOSS_FRAGMENT, BOSS_VERTEX } from './shaders.ts';
import { holeColour, keepoutUniforms } from './wallPart.ts';

export interface BossPart {
  readonly mesh: Mesh<BufferGeometry, ShaderMaterial>;
  dress(piece: PieceFigure, theme: Theme): void;
  /** To be called after the wall has been bent the same way. */
  bend(piece: PieceFigure, roll: number, span: Span, wall: WallMesh): void;
  /** Some corners all over it, enough to frame it, but for those that are hidden; x, y, z one after another. */
  corners(hidden: (phi: number) => boolean): number[];
  dispose(): void;
}

export function makeBoss(piece: PieceFigure): BossPart {
  const arrays = bossMesh(piece.shape);
  const geometry = new BufferGeometry();
  /** Three strips round the bore come first: rim, far rim and outside. */
  const roundIndices = 3 * 6 * piece.shape.columns;
  const changing = {
    position: new BufferAttribute(arrays.position, 3),
    normal: new BufferAttribute(arrays.normal, 3),
    place: new BufferAttribute(arrays.place, 2),
    face: new BufferAttribute(arrays.face, 1),
  };
  for (const [name, attribute] of Object.entries(changing)) {
    geometry.setAttribute(name, attribute.setUsage(DynamicDrawUsage));
  }
  geometry.setIndex(new BufferAttribute(arrays.index, 1));
  const material = new ShaderMaterial({
    vertexShader: BOSS_VERTEX,
    fragmentShader: BOSS_FRAGMENT,
    uniforms: {
      metal: { value: new Vector3() },
      cutMetal: { value: new Vector3() },
      ink: { value: new Vector3() },
      hole: { value: new Vector3() },
      ...asUniforms(keepoutUniforms([])),
      pixel: { value: 1 },
      half_: { value: 0 },
      away: { value: 0 },
      middle: { value: 0 },
    },
  });
  const mesh = new Mesh(geometry, material);
  mesh.frustumCulled = false;
  return {
    mesh,
    dress(figure, theme) {
      const palette = paletteOf(theme);
      for (const [name, value] of Object.entries(keepoutUniforms(figure.keepouts))) {
        material.uniforms[name]!.value = value;
      }
      material.uniforms.hole!.value = holeColour(theme);
      material.uniforms.metal!.value = raw(palette.boss);
      material.uniforms.cutMetal!.value = raw(palette.bossCut);
      material.uniforms.ink!.value = raw(palette.lineOnPale);
    },
    bend({ shape, metal }, roll, span, wall) {
      bendBoss(shape, roll, metal, span, wall, arrays);
      // Closed, the two faces of the cut lie in one another and would shimmer through the rim.
      const closed = span === WHOLE && roll < 1e-6;
      geometry.setDrawRange(0, closed ? roundIndices : Number.POSITIVE_INFINITY);
      for (const attribute of Object.values(changing)) attribute.needsUpdate = true;
      geometry.computeBoundingSphere();
    },
    corners: (hidden) => bossCorners(arrays, hidden),
    dispose() {
      geometry.dispose();
      material.dispose();
    },
  };
}

function asUniforms(values: Readonly<Record<string, unknown>>) {
  return Object.fromEntries(Object.entries(values).map(([name, value]) => [name, { value }]));
}
