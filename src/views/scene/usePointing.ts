/** Pointing at the wall in the scene sets the session's cursor. */
import { useEffect } from 'react';
import { type PerspectiveCamera, Vector2 } from 'three';
import { useSession } from '../../store/session.ts';
import type { Piece } from './piece.ts';

/** A press that moved farther than this, CSS pixels, turned the piece and pointed at nothing. */
const SLIP = 6;

export function usePointing(piece: Piece, camera: PerspectiveCamera, canvas: HTMLCanvasElement) {
  useEffect(() => {
    let pressed: { x: number; y: number } | null = null;
    let asked = 0;
    let last: { x: number; y: number } = { x: 0, y: 0 };
    const pointAt = ({ x, y }: { x: number; y: number }) => {
      const box = canvas.getBoundingClientRect();
      const point = new Vector2(
        ((x - box.left) / box.width) * 2 - 1,
        1 - ((y - box.top) / box.height) * 2,
      );
      const cursor = piece.placeUnder(point, camera);
      if (cursor !== null) useSession.getState().look({ cursor });
    };
    // Looking for the wall under the pointer costs some milliseconds: once a frame is enough.
    const soon = () => {
      asked = 0;
      pointAt(last);
    };
    const onMove = (event: PointerEvent) => {
      if (event.pointerType !== 'mouse' || event.buttons !== 0) return;
      last = { x: event.clientX, y: event.clientY };
      if (asked === 0) asked = requestAnimationFrame(soon);
    };
    const onDown = (event: PointerEvent) => {
      pressed = { x: event.clientX, y: event.clientY };
    };
    const onUp = (event: PointerEvent) => {
      const at = { x: event.clientX, y: event.clientY };
      if (pressed && Math.hypot(at.x - pressed.x, at.y - pressed.y) < SLIP) pointAt(at);
      pressed = null;
    };
    canvas.addEventListener('pointermove', onMove);
    canvas.addEventListener('pointerdown', onDown);
    canvas.addEventListener('pointerup', onUp);
    return () => {
      cancelAnimationFrame(asked);
      canvas.removeEventListener('pointermove', onMove);
      canvas.removeEventListener('pointerdown', onDown);
      canvas.removeEventListener('pointerup', onUp);
    };
  }, [piece, camera, canvas]);
}
