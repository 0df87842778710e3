/** Moves the piece and the eye to where the session wants them, and draws only while something moves. */
import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useEffect, useMemo, useRef } from 'react';
import type { PerspectiveCamera } from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import type { Theme } from '../../figures/colour.ts';
import { factorFor } from '../../figures/exaggeration.ts';
import { framedBy, homeTurn, lensAt, type Turn } from '../../figures/framing.ts';
import type { PieceFigure } from '../../figures/piece.ts';
import { type Session, useSession } from '../../store/session.ts';
import type { CutHold } from './CutHandle.tsx';
import { SMALL_PICTURE } from './marksPart.ts';
import { makePiece, type Piece } from './piece.ts';
import { useCutHold } from './useCutHold.ts';
import type { Overlaid } from './useOverlaid.ts';
import { usePointing } from './usePointing.ts';
import { useUnhurriedFrames } from './useUnhurriedFrames.ts';

interface Props {
  readonly overlaid: Overlaid;
  readonly theme: Theme;
  readonly hold: RefObject<CutHold>;
  /** Nothing glides: the person asked the system for less motion. */
  readonly still: boolean;
}

/** Seconds in which two thirds of a way are gone. */
const GLIDE = 0.13;
/** Room around the piece for the letters that stick out, CSS pixels. */
const EDGE = 20;
const SMALL_EDGE = 14;
const MOST_ELEVATION = 1.45;
/** What of the session the frame itself reads; all else comes with the figures. */
const POSED = ['cursor', 'roll', 'exaggeration', 'view', 'turn', 'away'] as const;

interface Pose extends Turn {
  readonly roll: number;
  /** Tangent of half the angle of view along the shorter side. */
  readonly lens: number;
  readonly exaggeration: number;
}

function wantedPose(session: Session, figure: PieceFigure): Pose {
  const half = session.view === 'half';
  const roll = half ? 0 : session.roll;
  const turn = session.turn ?? homeTurn(half, session.away, roll);
  const lens = lensAt(roll, half);
  return {
    ...turn,
    roll,
    lens,
    exaggeration: factorFor(session.exaggeration, figure.exaggeration),
  };
}

/** A share of the way from one pose to another; all of it when that is hardly seen any more. */
function glide(from: Pose, to: Pose, share: number): Pose {
  const step = (a: number, b: number, close: number) =>
    Math.abs(b - a) < close ? b : a + share * (b - a);
  return {
    roll: step(from.roll, to.roll, 1e-3),
    lens: step(from.lens, to.lens, 1e-3 * to.lens),
    azimuth: step(from.azimuth, to.azimuth, 2e-3),
    elevation: step(from.elevation, to.elevation, 2e-3),
    exaggeration: step(from.exaggeration, to.exaggeration, 0.01 * to.exaggeration),
  };
}

const same = (a: Pose, b: Pose) =>
  a.roll === b.roll &&
  a.lens === b.lens &&
  a.azimuth === b.azimuth &&
  a.elevation === b.elevation &&
  a.exaggeration === b.exaggeration;

/** Puts the eye so that the piece fills the frame, seen from the pose's direction. */
function look(camera: PerspectiveCamera, piece: Piece, pose: Pose, width: number, height: number) {
  const edge = height < SMALL_PICTURE ? SMALL_EDGE : EDGE;
  const seen = framedBy(piece.outline(), pose, pose.lens, { width, height }, edge);
  camera.fov = (2 * Math.atan(seen.tanY) * 180) / Math.PI;
  camera.aspect = width / height;
  camera.near = 0.5 * seen.nearest;
  camera.far = 1.5 * seen.farthest;
  camera.position.set(...seen.at);
  camera.up.set(0, 1, 0);
  const [x, y, z] = seen.axes.toward;
  camera.lookAt(seen.at[0] - x, seen.at[1] - y, seen.at[2] - z);
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
  return (seen.nearest + seen.farthest) / 2;
}

export function Rig({ overlaid, theme, still, hold }: Props) {
  const figure = overlaid.piece;
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const gl = useThree((state) => state.gl);
  const size = useThree((state) => state.size);
  const invalidate = useThree((state) => state.invalidate);
  // A piece is made once for a size of mesh; another evaluation only dresses it anew.
  const { columns, rows } = figure.shape;
  const piece = useMemo(() => makePiece(overlaid, theme), [columns, rows]);
  const pose = useRef<Pose | null>(null);
  const standing = useRef('');
  const frames = useRef(0);
  const draw = useUnhurriedFrames(invalidate);
  const controls = useTurning(camera, gl.domElement, pose, invalidate);
  usePointing(piece, camera, gl.domElement);
  const placeHandle = useCutHold(hold, piece, camera, gl.domElement);

  useEffect(() => () => piece.dispose(), [piece]);
  useEffect(() => {
    if (piece.dress(overlaid, theme)) standing.current = '';
    draw();
  }, [piece, overlaid, theme, draw]);
  useEffect(
    () =>
      useSession.subscribe((now, before) => {
        if (POSED.some((key) => now[key] !== before[key])) draw();
      }),
    [draw],
  );
  useEffect(() => {
    let gone = false;
    // The page's own type may come after the first picture.
    void document.fonts.ready.then(() => {
      if (gone) return;
      piece.redrawLetters();
      invalidate();
    });
    return () => {
      gone = true;
    };
  }, [piece, invalidate]);

  useFrame((_, delta) => {
    const session = useSession.getState();
    const wanted = wantedPose(session, figure);
    const from = pose.current ?? wanted;
    const now = still ? wanted : glide(from, wanted, 1 - Math.exp(-delta / GLIDE));
    pose.current = now;
    const away = session.view === 'half' && now.roll < 1e-6 ? session.away : null;
    const stance = `${now.roll} ${now.exaggeration} ${away}`;
    if (stance !== standing.current) {
      piece.stand({ roll: now.roll, exaggeration: now.exaggeration, away });
      standing.current = stance;
    }
    const marked = piece.point(session.cursor);
    gl.domElement.dataset.cursor = marked === null ? '' : `${marked.theta} ${marked.z}`;
    const far = look(camera, piece, now, size.width, size.height);
    piece.fit(camera, size.width, size.height, gl.getPixelRatio());
    placeHandle(away === null, now.roll);
    controls.current?.target
      .copy(camera.position)
      .addScaledVector(camera.getWorldDirection(controls.current.target.clone()), far);
    frames.current += 1;
    gl.domElement.dataset.frames = String(frames.current);
    gl.domElement.dataset.calls = String(gl.info.render.calls);
    if (!same(now, wanted)) invalidate();
  });

  return <primitive object={piece.group} />;
}

/** Turning by hand: sideways and up or down; never nearer, so that scrolling the page stays scrolling. */
function useTurning(
  camera: PerspectiveCamera,
  canvas: HTMLCanvasElement,
  pose: React.RefObject<Pose | null>,
  invalidate: () => void,
) {
  const controls = useRef<OrbitControls | null>(null);
  useEffect(() => {
    const made = new OrbitControls(camera, canvas);
    made.enableZoom = false;
    made.enablePan = false;
    made.rotateSpeed = 0.7;
    made.minPolarAngle = Math.PI / 2 - MOST_ELEVATION;
    made.maxPolarAngle = Math.PI / 2 + MOST_ELEVATION;
    // A finger that goes up or down scrolls the page; one that goes sideways turns the piece.
    canvas.style.touchAction = 'pan-y';
    let turning = false;
    const onChange = () => {
      if (!turning || pose.current === null) return;
      const turn = {
        azimuth: made.getAzimuthalAngle(),
        elevation: Math.PI / 2 - made.getPolarAngle(),
      };
      pose.current = { ...pose.current, ...turn };
      useSession.getState().look({ turn });
      invalidate();
    };
    const start = () => {
      turning = true;
    };
    const end = () => {
      turning = false;
    };
    made.addEventListener('start', start);
    made.addEventListener('end', end);
    made.addEventListener('change', onChange);
    controls.current = made;
    return () => {
      made.dispose();
      controls.current = null;
    };
  }, [camera, canvas, pose, invalidate]);
  return controls;
}
