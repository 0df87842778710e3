/**
 * Films laid over the wall: metal to take off, what a first pass may take of it, and what low places lack, each also
 * where rim and cut show it from the side. One mesh, bent by the graphics card.
 */
import { BufferAttribute, BufferGeometry, DoubleSide, Mesh, ShaderMaterial, Vector3 } from 'three';
import { halfSpan, WHOLE } from '../../figures/boss.ts';
import { paletteOf, type Theme } from '../../figures/colour.ts';
import type { Layers } from '../../figures/layers.ts';
import type { PieceFigure } from '../../figures/piece.ts';
import type { BendUniforms } from './bendShader.ts';
import { LAYER_FRAGMENT, LAYER_VERTEX } from './layerShaders.ts';
import { raw } from './raw.ts';

export interface LayersPart {
  readonly mesh: Mesh<BufferGeometry, ShaderMaterial>;
  dress(piece: PieceFigure, layers: Layers, theme: Theme): void;
  show(films: { readonly off: boolean; readonly low: boolean; readonly pass: boolean }): void;
  /** Puts the films' sides where the piece is cut. */
  cutAt(piece: PieceFigure, away: number | null, roll: number): void;
  dispose(): void;
}

/** Which film a corner belongs to. */
const [AT_TARGET, ON_WALL, SIDE, CUT_SIDE] = [0, 1, 2, 3];

interface Corner {
  readonly column: number;
  readonly row: number;
  /** 1 on the wall, 0 at the target. */
  readonly share: number;
  readonly film: number;
}

/** Corners of all films, and the triangles between them; the last four rows are the sides at the cut. */
function makeNet({ columns, rows }: Pick<Layers, 'columns' | 'rows'>) {
  const corners: Corner[] = [];
  const index: number[] = [];
  const grid = (down: number, across: number, at: (i: number, k: number) => Corner) => {
    const first = corners.length;
    for (let i = 0; i <= down; i++) for (let k = 0; k <= across; k++) corners.push(at(i, k));
    for (let i = 0; i < down; i++) {
      for (let k = 0; k < across; k++) {
        const a = first + i * (across + 1) + k;
        index.push(a, a + across + 1, a + 1, a + 1, a + across + 1, a + across + 2);
      }
    }
    return first;
  };
  grid(rows, columns, (row, column) => ({ column, row, share: 0, film: AT_TARGET }));
  grid(rows, columns, (row, column) => ({ column, row, share: 1, film: ON_WALL }));
  for (const row of [0, rows]) {
    grid(1, columns, (share, column) => ({ column, row, share, film: SIDE }));
  }
  const whole = index.length;
  const cuts = [0, columns].map((column) =>
    grid(1, rows, (share, row) => ({ column, row, share, film: CUT_SIDE })),
  );
  return { corners, index, whole, cuts };
}

export function makeLayers(
  shared: BendUniforms,
  size: Pick<Layers, 'columns' | 'rows'>,
): LayersPart {
  const { columns, rows } = size;
  const { corners, index, whole, cuts } = makeNet(size);
  const geometry = new BufferGeometry();
  const place = new BufferAttribute(new Float32Array(2 * corners.length), 2);
  const amounts = new BufferAttribute(new Float32Array(3 * corners.length), 3);
  const films = corners.flatMap(({ film, share }) => [film, share]);
  geometry.setAttribute('place', place);
  geometry.setAttribute('amounts', amounts);
  geometry.setAttribute('film', new BufferAttribute(Float32Array.from(films), 2));
  geometry.setIndex(new BufferAttribute(Uint32Array.from(index), 1));
  const material = makeMaterial(shared);
  const mesh = new Mesh(geometry, material);
  mesh.frustumCulled = false;
  let seen: Layers | null = null;
  const columnOf = corners.map(({ column }) => column);
  const fill = (piece: PieceFigure, from: number) => {
    if (seen === null) return;
    for (let i = from; i < corners.length; i++) {
      const { row } = corners[i]!;
      const at = row * (columns + 1) + columnOf[i]!;
      place.setXY(
        i,
        (columnOf[i]! / columns) * 2 * Math.PI - Math.PI,
        (row / rows) * piece.shape.length,
      );
      amounts.setXYZ(i, seen.deviation[at]!, seen.off[at]!, seen.pass[at]!);
    }
    place.needsUpdate = true;
    amounts.needsUpdate = true;
  };
  return {
    mesh,
    dress(piece, layers, theme) {
      seen = layers;
      fill(piece, 0);
      paint(material, piece, theme);
    },
    show({ off, low, pass }) {
      mesh.visible = off || low || pass;
      (material.uniforms.films!.value as Vector3).set(+off, +low, +pass);
    },
    cutAt(piece, away, roll) {
      const span = away === null ? WHOLE : halfSpan(away, piece.shape.cut, columns);
      [span.from, span.to].forEach((phi, i) => {
        const column = Math.round(((phi + Math.PI) / (2 * Math.PI)) * columns);
        columnOf.fill(column, cuts[i]!, cuts[i]! + 2 * (rows + 1));
      });
      fill(piece, cuts[0]!);
      // Closed, the two sides of the cut lie in one another.
      const closed = away === null && roll < 1e-6;
      geometry.setDrawRange(0, closed ? whole : index.length);
    },
    dispose() {
      geometry.dispose();
      material.dispose();
    },
  };
}

function makeMaterial(shared: BendUniforms): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: LAYER_VERTEX,
    fragmentShader: LAYER_FRAGMENT,
    side: DoubleSide,
    transparent: true,
    depthWrite: false,
    polygonOffset: true,
    polygonOffsetFactor: -1,
    polygonOffsetUnits: -4,
    uniforms: {
      ...shared,
      films: { value: new Vector3() },
      copper: { value: new Vector3() },
      teal: { value: new Vector3() },
      ink: { value: new Vector3() },
      ground: { value: new Vector3() },
      least: { value: 0 },
    },
  });
}

function paint(material: ShaderMaterial, piece: PieceFigure, theme: Theme): void {
  const palette = paletteOf(theme);
  const { copper, teal, ink, ground, least } = material.uniforms;
  copper!.value = raw(palette.copperText);
  teal!.value = raw(palette.tealText);
  ink!.value = raw(palette.ink);
  ground!.value = raw(palette.ground);
  // Films thinner than a small share of a contour step would only fray.
  least!.value = 0.08 * piece.steps.step;
}
