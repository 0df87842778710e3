/** The whole piece in the scene: wall, metal, letters and pins, four draw calls. */
import { Group, type PerspectiveCamera, Raycaster, type Vector2, Vector3 } from 'three';
import { fromMiddle, middleOf, poseAt } from '../../figures/bend.ts';
import { halfSpan, WHOLE } from '../../figures/boss.ts';
import type { Theme } from '../../figures/colour.ts';
import type { PieceFigure } from '../../figures/piece.ts';
import type { Place } from '../../store/session.ts';
import { makeBoss } from './bossPart.ts';
import { makeLetters } from './letters.ts';
import { makeMarks } from './marksPart.ts';
import { makePins } from './pinsPart.ts';
import { makeWall } from './wallPart.ts';

/** How the piece stands. */
export interface Stance {
  readonly roll: number;
  readonly exaggeration: number;
  /** Clock position of the half that is taken off; null whole. */
  readonly away: number | null;
}

export interface Piece {
  readonly group: Group;
  dress(figure: PieceFigure, theme: Theme): void;
  stand(stance: Stance): void;
  point(cursor: Place | null): void;
  /** Tells the paint how large the picture is, CSS pixels, and how fine the screen. */
  fit(width: number, height: number, fineness: number): void;
  /** Outline of the piece as it stands, in the world, x, y, z one after another. */
  outline(): Float32Array;
  /** The place on the wall under a point of the picture (-1 to 1 each way); null where there is none. */
  placeUnder(point: Vector2, camera: PerspectiveCamera): Place | null;
  redrawLetters(): void;
  dispose(): void;
}

export function makePiece(first: PieceFigure, firstTheme: Theme): Piece {
  let figure = first;
  let theme = firstTheme;
  let stance: Stance = { roll: 0, exaggeration: 1, away: null };
  let marksAt: number[] = [];
  const letters = makeLetters();
  const wall = makeWall(first);
  const boss = makeBoss(first);
  const marks = makeMarks(letters);
  const pins = makePins();
  const group = new Group();
  group.rotation.order = 'XYZ';
  group.add(boss.mesh, wall.mesh, pins.mesh, marks.mesh);
  marks.mesh.renderOrder = 1;
  const painted = [wall.mesh.material.uniforms, boss.mesh.material.uniforms];

  const removed = (theta: number) => stance.away !== null && Math.cos(theta - stance.away) > 1e-4;
  const removedAt = (phi: number) => removed(phi + middleOf(figure.shape.cut));

  return {
    group,
    dress(next, nextTheme) {
      figure = next;
      theme = nextTheme;
      wall.dress(figure, theme);
      boss.dress(theme);
      pins.dress(figure, theme);
      letters.draw(theme);
    },
    stand(next) {
      stance = next;
      const { roll, exaggeration, away } = next;
      const { cut, columns } = figure.shape;
      const span = away === null ? WHOLE : halfSpan(away, cut, columns);
      wall.bend(figure, roll, exaggeration);
      boss.bend(figure, roll, span, wall.arrays);
      pins.place(figure, roll, exaggeration, removed);
      marksAt = marks.place(figure, roll, removedAt);
      const { spin, tip } = poseAt(roll, cut);
      group.rotation.set(tip, 0, spin);
      group.updateMatrixWorld();
      for (const uniforms of painted) {
        uniforms.half_!.value = away === null ? 0 : 1;
        uniforms.away!.value = away ?? 0;
        uniforms.middle!.value = middleOf(cut);
      }
    },
    point(cursor) {
      const at = wall.mesh.material.uniforms.cursor!.value as Vector3;
      if (cursor === null) at.set(0, 0, 0);
      else at.set(fromMiddle(cursor.theta, figure.shape.cut), cursor.z, 1);
    },
    fit(width, height, fineness) {
      for (const uniforms of painted) uniforms.pixel!.value = fineness;
      marks.fit(width, height);
    },
    outline: () => outlineOf(group, boss.corners(removedAt), marksAt),
    placeUnder(point, camera) {
      const ray = new Raycaster();
      ray.setFromCamera(point, camera);
      for (const hit of ray.intersectObjects([wall.mesh, boss.mesh], false)) {
        if (hit.object === wall.mesh && hit.uv) {
          const theta = hit.uv.x + middleOf(figure.shape.cut);
          if (removed(theta)) continue;
          return { theta: theta - 2 * Math.PI * Math.floor(theta / (2 * Math.PI)), z: hit.uv.y };
        }
        if (!bossTakenOff(hit.point, group, stance.away)) return null;
      }
      return null;
    },
    redrawLetters: () => letters.draw(theme),
    dispose() {
      for (const part of [wall, boss, marks, pins]) part.dispose();
      letters.texture.dispose();
    },
  };
}

/** True where a point of the boss lies in the half that is taken off; as a hole only, which half always is. */
function bossTakenOff(point: Vector3, group: Group, away: number | null): boolean {
  if (away === null) return false;
  const here = group.worldToLocal(point.clone());
  return here.x * Math.sin(away) + here.y * Math.cos(away) > 1e-3;
}

/** Corners of the boss and marks, in the world. */
function outlineOf(
  group: Group,
  corners: readonly number[],
  marks: readonly number[],
): Float32Array {
  const out = Float32Array.from([...corners, ...marks]);
  const point = new Vector3();
  for (let i = 0; i < out.length; i += 3) {
    point.fromArray(out, i).applyMatrix4(group.matrixWorld).toArray(out, i);
  }
  return out;
}
