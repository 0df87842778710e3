/** What the words of the trade mean, one or two plain sentences each: common practice. */
import type { TermId } from './termNames.ts';

export interface Term {
  readonly name: string;
  readonly says: string;
}

export const TERMS: Readonly<Record<TermId, Term>> = {
  'out-of-round': {
    name: 'Out-of-round',
    says: 'Any departure from a circle. The shop figure is the greatest size less the least, across, at one depth.',
  },
  'per-side': {
    name: 'Per side',
    says: 'Counted from the wall to where it should be, on one side only: what the grinder takes off there. Two sides make twice that across.',
  },
  across: {
    name: 'Across',
    says: 'Measured right through the middle, from wall to wall: a diameter. A gauge with two ends shows it.',
  },
  'give-or-take': {
    name: 'Give or take',
    says: 'How far the true figure may lie to either side of the one that is said. 19 times in 20 it lies within.',
  },
  target: {
    name: 'Target',
    says: 'The round hole that the bore is to become: the bushing’s outside less the press fit. Metal inside it comes off; outside it metal is missing.',
  },
  'high-spot': {
    name: 'High spot',
    says: 'Metal that stands inside the target, too far towards the middle. It has a minus sign, −3.5: take it off.',
  },
  'low-spot': {
    name: 'Low spot',
    says: 'Where metal is missing: the wall lies outside the target. It has a plus sign, +4.1: fill it, or accept it. Grinding cannot mend it.',
  },
  'bell-mouth': {
    name: 'Bell-mouth',
    says: 'The bore opens out near its mouth only and keeps its size further in. Rocking of the pin does it, and so does a drum held at the rim.',
  },
  taper: {
    name: 'Taper',
    says: 'The size changes evenly from one face to the other, as in a funnel.',
  },
  barrel: {
    name: 'Barrel',
    says: 'Fattest in the middle of its length, tighter at both ends. A gauge that gets only a little way in does not see it.',
  },
  waist: {
    name: 'Waist',
    says: 'Tightest in the middle of its length, larger at both ends, as an hourglass.',
  },
  egg: {
    name: 'Egg-shaped',
    says: 'Worn to one side: one end of the hole has moved, the other has not. Sizes across cannot tell it from an oval.',
  },
  oval: {
    name: 'Oval',
    says: 'One way across is longest and the way square to it shortest; both ends are alike.',
  },
  lobes: {
    name: 'Lobes',
    says: 'How many times the wall swells out in one turn. With three or five of them every size across is the same, and yet a round plug will not enter.',
  },
  'crossed-wear': {
    name: 'Crossed wear',
    says: 'Worn on one side at one face and on the other side at the other: the pin has stood askew.',
  },
  'clock-pair': {
    name: 'Clock pair',
    says: 'Two opposite hours that a gauge with two ends touches at once: 12–6, 1–7 and so on. Six pairs go all round.',
  },
  'clock-position': {
    name: 'Clock position',
    says: 'A place round the bore, by the hours of a clock as you look in at face A. 12 o’clock is the punch mark.',
  },
  'face-a': {
    name: 'Face A and face B',
    says: 'The two ends of the bore. You look in at face A; seen from face B the clock is mirrored, and 3 o’clock is 9. Mark face A with a punch.',
  },
  'set-up': {
    name: 'Set-up',
    says: 'One clamping of a spindle, or one boss that walls are measured on. Whatever is off in it is off alike in all its readings.',
  },
  sweep: {
    name: 'Sweep',
    says: 'A dial indicator on a spindle is led once round the wall. It shows the shape and, with several depths, which side is worn; not the size.',
  },
  'telescoping-gauge': {
    name: 'Telescoping gauge',
    says: 'A spring T that is locked in the bore, drawn out, and measured with a micrometer. Rock it: square to the axis it is shortest.',
  },
  'wall-thickness': {
    name: 'Wall thickness',
    says: 'From the outside of the boss to the bore, by caliper at each clock hour. Where the outside is true, it tells which side is worn.',
  },
  'press-fit': {
    name: 'Press fit',
    says: 'By how much the bushing is larger than its hole, across, before it goes in. It holds by that.',
  },
  seat: {
    name: 'Seat',
    says: 'The stretch of the bore that holds the bushing. Where the wall is low, the bushing does not touch: it is not seated there.',
  },
  play: {
    name: 'Play',
    says: 'How much larger the hole is than its pin, across. At the tip of an arm it shows many times over.',
  },
  'biggest-plug': {
    name: 'Biggest plug',
    says: 'The largest straight round plug that would go in: it stops at the highest spots.',
  },
  'average-round': {
    name: 'Average round',
    says: 'The round hole that lies in the middle of the wall as it is, as much of it inside as outside. A picture of the bore, not a size to grind to.',
  },
  'clean-up': {
    name: 'Clean-up size',
    says: 'The smallest round hole that leaves none of the old wall: it just reaches the deepest low spot.',
  },
  feather: {
    name: 'Feather',
    says: 'Let the cut run out to nothing at its edges, so that no step is left.',
  },
  boss: {
    name: 'Boss',
    says: 'The thick collar of metal round the bore.',
  },
  repeats: {
    name: 'How a gauge repeats',
    says: 'How far apart the same hand gets with the same gauge at the same place. No answer can be finer than that.',
  },
  'old-centre': {
    name: 'Old centre',
    says: 'Where the middle of the bore was when it was new. To keep it costs twice the wear of a worn side across; to let it move costs that wear once.',
  },
};
