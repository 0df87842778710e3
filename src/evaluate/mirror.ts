/**
 * Does the pin mirror the hole: a pin held fast wears on the side that faces the worn side of the hole, one that turns
 * wears all round. Common practice of the trade; no published source.
 */
import type { Known, Mirror, Seen } from './jointTypes.ts';
import { isOutside } from './part.ts';

/** An hour and a half: nearer than that a pin's flat and a hole's long way are marked on one line. */
const ONE_LINE = Math.PI / 4;

export function mirrorOf(hole: Known, pin: Known | null): Mirror {
  const none = { hole: hole.name, holeTheta: Number.NaN, pinTheta: Number.NaN };
  if (pin === null) return { ...none, pin: null, verdict: 'not-measured', why: 'no-pin' };
  const named = { ...none, pin: pin.name };
  if (pin.seen === null) return { ...named, verdict: 'not-measured', why: 'pin-list' };
  const holeTheta = lineOf(hole.seen, 'greatest');
  const pinTheta = lineOf(pin.seen, 'least');
  const lines = { ...named, holeTheta, pinTheta };
  const [holeOut, pinOut] = [!Number.isNaN(holeTheta), !Number.isNaN(pinTheta)];
  if (holeOut && pinOut) {
    if (apart(holeTheta, pinTheta) <= ONE_LINE) {
      return { ...lines, verdict: 'agrees', why: 'one-side' };
    }
    const mirrored = apart(-holeTheta, pinTheta) <= ONE_LINE / 2;
    return { ...lines, verdict: 'contradicts', why: mirrored ? 'mirrored' : 'crossed' };
  }
  if (holeOut) {
    if (wornAllRound(pin)) return { ...lines, verdict: 'agrees', why: 'turned' };
    return pin.newFrom === 'typed'
      ? { ...lines, verdict: 'contradicts', why: 'pin-unworn' }
      : { ...lines, verdict: 'cannot-tell', why: 'no-new-size' };
  }
  if (pinOut) return { ...lines, verdict: 'contradicts', why: 'hole-unworn' };
  const both = wornAllRound(pin) && wornAllRound(hole);
  return { ...lines, verdict: both ? 'agrees' : 'cannot-tell', why: 'all-round' };
}

function apart(a: number, b: number): number {
  return Math.abs(Math.atan(Math.tan(a - b)));
}

/** Of the depth that is most out of round, where that stands above its give-or-take. */
function lineOf(seen: Seen | null, end: 'least' | 'greatest'): number {
  const out = (seen?.sections ?? []).flatMap((s) => {
    const oval = s.lobes.find(({ n }) => n === 2);
    return oval !== undefined && oval.amplitude > 3 * oval.sd ? [{ s, a: oval.amplitude }] : [];
  });
  if (out.length === 0) return Number.NaN;
  const worst = out.reduce((a, b) => (b.a > a.a ? b : a));
  return worst.s[end].theta % Math.PI;
}

/** On the mean, by twice its give-or-take: against the new size, or the thinnest depth against the thickest. */
function wornAllRound({ kind, size, sections, newSize, newFrom }: Known): boolean {
  if (newFrom === 'typed') {
    const gone = isOutside(kind) ? newSize - size.mean.mm : size.mean.mm - newSize;
    return gone > 2 * size.mean.give;
  }
  if (newFrom === 'missing') return false;
  const means = sections.map(({ meanDiameter }) => meanDiameter);
  return Math.max(...means) - Math.min(...means) > 2 * Math.SQRT2 * size.mean.give;
}
