/** The whole piece in the scene: wall, metal, pins, films, lines, bushing and letters, seven draw calls. */
import { Group, type PerspectiveCamera, Raycaster, type Vector2, Vector3 } from 'three';
import { fromMiddle, middleOf, poseAt } from '../../figures/bend.ts';
import { halfSpan, WHOLE } from '../../figures/boss.ts';
import type { Theme } from '../../figures/colour.ts';
import { pressSigns } from '../../figures/pressStrokes.ts';
import { turned } from '../../figures/sample.ts';
import { signsOf } from '../../figures/signs.ts';
import type { Place } from '../../store/session.ts';
import { bendUniforms } from './bendShader.ts';
import { makeBoss } from './bossPart.ts';
import { makeFit } from './fitPart.ts';
import { makeLayers } from './layersPart.ts';
import { type Letters, makeLetters } from './letters.ts';
import { makeLines } from './linesPart.ts';
import { makeMarks } from './marksPart.ts';
import { makePins } from './pinsPart.ts';
import type { Overlaid } from './useOverlaid.ts';
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
  /** @returns whether it has to be stood up anew: lines alone bend by themselves */
  dress(overlaid: Overlaid, theme: Theme): boolean;
  stand(stance: Stance): void;
  /** Marks a place on the wall, or none; returns it as it is told to the paint. */
  point(cursor: Place | null): Place | null;
  /** Tells the paint how large the picture is, CSS pixels, and how fine the screen; after the camera is placed. */
  fit(camera: PerspectiveCamera, width: number, height: number, fineness: number): void;
  /** Outline of the piece as it stands, in the world, x, y, z one after another. */
  outline(): Float32Array;
  /** The place on the wall under a point of the picture (-1 to 1 each way); null where there is none. */
  placeUnder(point: Vector2, camera: PerspectiveCamera): Place | null;
  /** Where the cut is taken by, in the world; null where it is not to be moved. */
  knob(): Vector3 | null;
  /** Share of the picture's width that the rolled out piece takes; after the camera is placed. */
  width(): number;
  redrawLetters(): void;
  dispose(): void;
}

/** Lines are thicker in the sun. */
const BOLD: Readonly<Record<Theme, number>> = { light: 1, dark: 1, sunlight: 1.6 };

function makeParts(first: Overlaid) {
  const shared = bendUniforms();
  const letters = makeLetters();
  const wall = makeWall(first.piece);
  const boss = makeBoss(first.piece);
  const pins = makePins();
  const lines = makeLines(shared);
  const layers = makeLayers(shared, first.layers ?? { columns: 1, rows: 1 });
  const fit = makeFit(shared);
  const marks = makeMarks(letters);
  layers.mesh.renderOrder = 1;
  marks.mesh.renderOrder = 2;
  return { shared, letters, wall, boss, pins, lines, layers, fit, marks };
}

export function makePiece(first: Overlaid, firstTheme: Theme): Piece {
  let laid = first;
  let theme = firstTheme;
  let stance: Stance = { roll: 0, exaggeration: 1, away: null };
  let marksAt: number[] = [];
  let wide = 1;
  const { shared, letters, ...parts } = makeParts(first);
  const { wall, boss, pins, lines, layers, fit, marks } = parts;
  const group = new Group();
  group.rotation.order = 'XYZ';
  for (const part of Object.values(parts)) group.add(part.mesh);
  const painted = [shared, wall.mesh.material.uniforms, boss.mesh.material.uniforms];
  const shape = () => laid.piece.shape;

  const removed = (theta: number) => stance.away !== null && Math.cos(theta - stance.away) > 1e-4;
  const removedAt = (phi: number) => removed(phi + middleOf(shape().cut));

  return {
    group,
    dress(next, nextTheme) {
      const all = laid === first || theme !== nextTheme;
      const anew = all || next.piece !== laid.piece || next.layers !== laid.layers;
      const told = next.pressed !== laid.pressed;
      const moved = anew || told || next.shown !== laid.shown || next.fit !== laid.fit;
      const drawn = all || next.strokes !== laid.strokes;
      laid = next;
      theme = nextTheme;
      if (all) dressTheme(parts, letters, theme);
      if (anew) {
        wall.dress(laid.piece, theme);
        boss.dress(laid.piece, theme);
        pins.dress(laid.piece, theme);
        if (laid.layers !== null) layers.dress(laid.piece, laid.layers, theme);
      }
      if (drawn) lines.draw(laid.strokes, shape().radius);
      if (moved) show(parts, laid);
      return moved;
    },
    stand(next) {
      stance = next;
      const { roll, exaggeration, away } = next;
      const { cut, columns, radius } = shape();
      const span = away === null ? WHOLE : halfSpan(away, cut, columns);
      wall.bend(laid.piece, roll, exaggeration);
      boss.bend(laid.piece, roll, span, wall.arrays);
      layers.cutAt(laid.piece, away, roll);
      pins.place(laid.piece, roll, exaggeration, removed);
      const filled = laid.fit !== null;
      const told = signsOf(laid.piece, { zones: laid.shown.zones, filled, away, roll });
      const pressed = filled && roll < 0.1 ? null : laid.pressed;
      const signs = [...told, ...(pressed === null ? [] : pressSigns(laid.piece, pressed.wall))];
      const seen = signs.filter(({ of }) => !removedAt(of));
      marksAt = marks.place(laid.piece, seen, { roll, exaggeration });
      const { spin, tip } = poseAt(roll, cut);
      group.rotation.set(tip, 0, spin);
      group.updateMatrixWorld();
      Object.assign(group.userData, { roll, away, closed: roll < 0.05 && away === null });
      for (const uniforms of painted) {
        uniforms.half_!.value = away === null ? 0 : 1;
        uniforms.away!.value = away ?? 0;
        uniforms.middle!.value = middleOf(cut);
      }
      shared.radius.value = radius;
      shared.roll.value = roll;
      shared.exaggeration.value = exaggeration;
    },
    point(cursor) {
      const at = wall.mesh.material.uniforms.cursor!.value as Vector3;
      if (cursor === null) at.set(0, 0, 0);
      else at.set(fromMiddle(cursor.theta, shape().cut), cursor.z, 1);
      return at.z < 0.5 ? null : { theta: turned(middleOf(shape().cut) + at.x), z: at.y };
    },
    fit(camera, width, height, fineness) {
      for (const uniforms of painted) uniforms.pixel!.value = fineness * BOLD[theme];
      lines.fit(width, height);
      marks.arrange(camera, group, width, height);
      const { position } = wall.arrays;
      const last = 3 * shape().columns;
      const [left, right] = [0, last].map(
        (i) => group.localToWorld(new Vector3().fromArray(position, i)).project(camera).x,
      );
      wide = Math.abs(right! - left!) / 2;
    },
    width: () => wide,
    outline() {
      const pin = stance.roll > 0 ? [] : pinCorners(laid.fit?.pin ?? 0, fit.ends());
      return outlineOf(group, [...boss.corners(removedAt), ...marksAt, ...pin]);
    },
    placeUnder(point, camera) {
      const ray = new Raycaster();
      ray.setFromCamera(point, camera);
      for (const hit of ray.intersectObjects([wall.mesh, boss.mesh], false)) {
        if (hit.object === wall.mesh && hit.uv) {
          const theta = hit.uv.x + middleOf(shape().cut);
          if (removed(theta)) continue;
          return { theta: theta - 2 * Math.PI * Math.floor(theta / (2 * Math.PI)), z: hit.uv.y };
        }
        if (!bossTakenOff(hit.point, group, stance.away)) return null;
      }
      return null;
    },
    knob() {
      const at = marks.knob();
      return at === null ? null : group.localToWorld(at.clone());
    },
    redrawLetters: () => letters.draw(theme),
    dispose() {
      for (const part of Object.values(parts)) part.dispose();
      letters.texture.dispose();
    },
  };
}

type Parts = Omit<ReturnType<typeof makeParts>, 'shared' | 'letters'>;

function dressTheme({ lines, fit, marks }: Parts, letters: Letters, theme: Theme): void {
  for (const part of [lines, fit, marks]) part.dress(theme);
  letters.draw(theme);
}

/** Shows what is switched on. */
function show({ wall, pins, layers, fit }: Parts, laid: Overlaid): void {
  const { piece, shown, fit: bushing, pressed } = laid;
  wall.edge(piece, shown['metal-off']);
  // Lines of pressure stand alone: the colours go on telling the wear.
  wall.contour(piece, pressed === null);
  pins.show(shown.readings);
  layers.show({ off: shown['metal-off'], low: shown.low, pass: shown['first-pass'] });
  fit.draw(bushing, piece.shape.length);
}

/** True where a point of the boss lies in the half that is taken off; as a hole only, which half always is. */
function bossTakenOff(point: Vector3, group: Group, away: number | null): boolean {
  if (away === null) return false;
  const here = group.worldToLocal(point.clone());
  return here.x * Math.sin(away) + here.y * Math.cos(away) > 1e-3;
}

/** Corners of boxes about the ends of the pin. */
function pinCorners(radius: number, ends: readonly number[]): number[] {
  return ends.flatMap((z) =>
    [-1, 1].flatMap((x) => [-1, 1].flatMap((y) => [x * radius, y * radius, -z])),
  );
}

/** Corners of the piece, put into the world. */
function outlineOf(group: Group, corners: readonly number[]): Float32Array {
  const out = Float32Array.from(corners);
  const point = new Vector3();
  for (let i = 0; i < out.length; i += 3) {
    point.fromArray(out, i).applyMatrix4(group.matrixWorld).toArray(out, i);
  }
  return out;
}
