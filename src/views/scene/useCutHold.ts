/** Joins the grip of the cut line to the scene: where it stands, and which clock position is under a pointer. */
import { type RefObject, useEffect } from 'react';
import { type PerspectiveCamera, Plane, Raycaster, Vector2, Vector3 } from 'three';
import { useSession } from '../../store/session.ts';
import type { CutHold, Point } from './CutHandle.tsx';
import type { Piece } from './piece.ts';

/** Up to here the piece is a hole, and the grip goes round it; beyond, the strip slides under the pointer. */
const HOLE = 0.05;

/** @returns puts the grip in its place; to be called once a frame, after the camera */
export function useCutHold(
  hold: RefObject<CutHold>,
  piece: Piece,
  camera: PerspectiveCamera,
  canvas: HTMLCanvasElement,
): (movable: boolean, roll: number) => void {
  useEffect(() => {
    const held = hold.current;
    held.thetaUnder = (from, to, cut) => {
      const { roll, view } = useSession.getState();
      const closed = view === 'half' || roll < HOLE;
      return closed
        ? aroundHole(piece, camera, canvas, to)
        : alongStrip(canvas, piece, from, to, cut);
    };
    return () => {
      held.thetaUnder = null;
    };
  }, [hold, piece, camera, canvas]);
  return (movable) => {
    const { element } = hold.current;
    if (element === null) return;
    const at = movable ? piece.knob() : null;
    const faces = at !== null && facesEye(piece, camera);
    element.style.visibility = faces ? 'visible' : 'hidden';
    if (at === null) return;
    const { x, y } = at.project(camera);
    const [left, top] = [((x + 1) / 2) * canvas.clientWidth, ((1 - y) / 2) * canvas.clientHeight];
    element.style.transform = `translate(${left.toFixed(1)}px, ${top.toFixed(1)}px)`;
  };
}

/** True where one looks at the rim of face A, not at the other end. */
function facesEye({ group }: Piece, camera: PerspectiveCamera): boolean {
  const { closed } = group.userData;
  return closed !== true || group.worldToLocal(camera.position.clone()).z > 0;
}

/** Clock position at which the pointer's ray goes through the plane of the rim; null where it misses that. */
function aroundHole(
  { group }: Piece,
  camera: PerspectiveCamera,
  canvas: HTMLCanvasElement,
  to: Point,
): number | null {
  const box = canvas.getBoundingClientRect();
  const x = ((to.x - box.left) / box.width) * 2 - 1;
  const y = 1 - ((to.y - box.top) / box.height) * 2;
  const ray = new Raycaster();
  ray.setFromCamera(new Vector2(x, y), camera);
  const rim = new Plane(new Vector3(0, 0, 1), 0).applyMatrix4(group.matrixWorld);
  const hit = ray.ray.intersectPlane(rim, new Vector3());
  if (hit === null) return null;
  const here = group.worldToLocal(hit);
  return Math.atan2(here.x, here.y);
}

/** The strip goes with the pointer: a whole width of it is a whole turn. */
function alongStrip(
  canvas: HTMLCanvasElement,
  piece: Piece,
  from: Point,
  to: Point,
  cut: number,
): number {
  const turn = (2 * Math.PI) / Math.max(1, piece.width() * canvas.clientWidth);
  return cut - (to.x - from.x) * turn;
}
