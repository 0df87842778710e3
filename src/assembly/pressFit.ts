/**
 * A round bushing pressed into a round boss, by Lamé's solution for thick rings in plane stress. mm, MPa, N; sizes and press
 * fits across. Pulling stresses are positive.
 *
 * With q = (c/b)² of the boss and s = (a/c)² of the bushing (a its bore, c where they touch, b the boss's outside, all radii):
 *
 *     p = (fit / 2) / { c [ ((1 + q)/(1 − q) + ν)/E of the boss + ((1 + s)/(1 − s) − ν)/E of the bushing ] }
 *
 * A bushing without a bore (s = 0) and a boss without end (q = 0) are the limits of the same terms.
 */
import type { Material } from './material.ts';

type Elastic = Pick<Material, 'elastic' | 'poisson'>;

export interface Rings {
  /** Bore of the bushing; 0: it is solid. */
  readonly inside: number;
  /** Where bushing and boss touch. */
  readonly seat: number;
  /** Outside of the boss; Infinity: far away. */
  readonly outside: number;
  readonly bushing: Elastic;
  readonly boss: Elastic;
}

/** Of one ring: positive pulls. `equivalent` is von Mises's greatest in the ring, `pull` the greatest hoop pull. */
export interface RingStress {
  readonly hoopInside: number;
  readonly hoopOutside: number;
  readonly equivalent: number;
}

export interface Pressed {
  readonly fit: number;
  readonly pressure: number;
  readonly bushing: RingStress;
  readonly boss: RingStress;
  /** How much smaller the bushing's bore gets; 0 where it has none. */
  readonly closesIn: number;
  /** How much larger the boss gets outside. */
  readonly grows: number;
}

/** Why there is no answer. */
export type PressFault = 'bushing' | 'boss' | 'size' | 'material';

/** What is wrong with these rings; null: nothing is. */
export function ringsFault({ inside, seat, outside, bushing, boss }: Rings): PressFault | null {
  if (!(seat > 0) || !Number.isFinite(seat)) return 'size';
  if (!(inside >= 0 && inside < seat)) return 'bushing';
  if (!(outside > seat)) return 'boss';
  return isElastic(bushing) && isElastic(boss) ? null : 'material';
}

function isElastic({ elastic, poisson }: Elastic): boolean {
  return elastic > 0 && Number.isFinite(elastic) && poisson >= 0 && poisson < 0.5;
}

/**
 * @param fit press fit, across; what is not above 0 presses on nothing
 * @returns all NaN where `ringsFault` finds one, or the fit is not known
 */
export function pressed(rings: Rings, fit: number): Pressed {
  const { inside, seat, outside, bushing, boss } = rings;
  const fault = ringsFault(rings) !== null || Number.isNaN(fit);
  const q = fault ? Number.NaN : (seat / outside) ** 2;
  const s = fault ? Number.NaN : (inside / seat) ** 2;
  const bossHoop = (1 + q) / (1 - q);
  const bushingHoop = (1 + s) / (1 - s);
  const give = (bossHoop + boss.poisson) / boss.elastic;
  const giveIn = (bushingHoop - bushing.poisson) / bushing.elastic;
  const pressure = Math.max(0, fit) / (seat * (give + giveIn));
  const bored = inside > 0;
  return {
    fit,
    pressure,
    bushing: {
      // A solid bushing is pressed alike all through; any hole in it, however fine, doubles the stress at its edge.
      hoopInside: bored ? (-2 * pressure) / (1 - s) : -pressure,
      hoopOutside: -pressure * bushingHoop,
      equivalent: bored ? (2 * pressure) / (1 - s) : pressure,
    },
    boss: {
      hoopInside: pressure * bossHoop,
      hoopOutside: (2 * pressure * q) / (1 - q),
      equivalent: pressure * Math.sqrt(bossHoop ** 2 + bossHoop + 1),
    },
    closesIn: (2 * inside * pressure) / (1 - s) / bushing.elastic,
    grows: (2 * seat * pressure * Math.sqrt(q)) / (1 - q) / boss.elastic,
  };
}

/** Force along the bore and torque at which it slips, N and N mm. */
export function slip(
  { seat }: Pick<Rings, 'seat'>,
  { pressure }: Pick<Pressed, 'pressure'>,
  length: number,
  friction: number,
): { readonly force: number; readonly torque: number } {
  const force = Math.PI * seat * length * pressure * friction;
  return { force, torque: (force * seat) / 2 };
}

/** Press fit, across, at which the ring's metal first yields; Infinity where no press fit would do. */
export function yieldsAt(rings: Rings, which: 'bushing' | 'boss', of: StrengthOf): number {
  return of.strength / stressed(pressed(rings, 1)[which], of);
}

export interface StrengthOf {
  /** Yield, or tensile strength where the metal breaks without yielding, MPa. */
  readonly strength: number;
  readonly brittle: boolean;
}

/** The stress that counts against the strength: von Mises's, or the greatest pull where the metal breaks without yielding. */
export function stressed({ equivalent, hoopInside }: RingStress, { brittle }: StrengthOf): number {
  return brittle ? Math.max(0, hoopInside) : equivalent;
}
