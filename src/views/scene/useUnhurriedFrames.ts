/**
 * Asks for a frame: at once where frames are quick. Where one takes long (no graphics card, a weak one), not before the
 * hand that types a reading rests, or every key press would wait for the drawing.
 */
import { useEffect, useMemo } from 'react';

/** A frame longer than this would be felt in the keys, ms. */
const SLOW_MS = 50;
/** How long after a key press the hand is taken to rest, ms. */
const REST_MS = 400;

/** @param invalidate draws one frame, in the browser's own time */
export function useUnhurriedFrames(invalidate: () => void): () => void {
  const frames = useMemo(() => unhurried(invalidate), [invalidate]);
  useEffect(() => {
    addEventListener('keydown', frames.pressed, { capture: true, passive: true });
    return () => {
      removeEventListener('keydown', frames.pressed, { capture: true });
      frames.stop();
    };
  }, [frames]);
  return frames.ask;
}

function unhurried(invalidate: () => void) {
  let slow = false;
  let lastKey = Number.NEGATIVE_INFINITY;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const draw = () => {
    timer = undefined;
    invalidate();
    // The frame is drawn in the first of these; the second comes when the machine is through with it.
    requestAnimationFrame((drawn) =>
      requestAnimationFrame((through) => {
        slow = through - drawn > SLOW_MS;
      }),
    );
  };
  const ask = () => {
    clearTimeout(timer);
    const wait = slow ? lastKey + REST_MS - performance.now() : 0;
    if (wait > 0) timer = setTimeout(ask, wait);
    else draw();
  };
  return {
    ask,
    pressed: ({ target, timeStamp }: KeyboardEvent) => {
      if (target instanceof HTMLInputElement && target.type === 'text') lastKey = timeStamp;
    },
    stop: () => clearTimeout(timer),
  };
}
