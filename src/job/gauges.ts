/**
 * The generic gauges of the trade with typical figures, for a gauge whose own figures are not given.
 *
 * The figures are judgement, not a maker's promise: one standard deviation is about half of the give-or-take
 * that mechanics report for the kind of gauge in ordinary hands (inside jaws of a caliper 0.002 to 0.003 in,
 * telescoping gauge and micrometer 0.0005 to 0.001, home-made stick gauge 0.001, dial bore gauge and three-leg
 * micrometer 0.0002 to 0.0005, indicator swept from a pin 0.0005 and the centring; an outside micrometer is taken to be
 * like a dial bore gauge). Wherever they are shown they are called typical and can be changed.
 */
import type { Feature, Gauge, GaugeType, Instrument, Reading } from './schema.ts';
import { lengthMm } from './units.ts';

export interface GaugeKind {
  readonly type: GaugeType;
  readonly kind: Instrument;
  readonly name: string;
  /** Smallest step it shows, mm. */
  readonly resolution: number;
  /** One standard deviation of a reading repeated at one place, mm. */
  readonly repeatability: number;
  /** How deep from its face it reads, mm. */
  readonly reach: number;
  /** How deep the longest of its kind gets, mm: a reading past this is in doubt though nobody stated a reach. */
  readonly longest: number;
  /** What it cannot see, in one sentence. */
  readonly blindTo: string;
}

const NO_SIDE = 'It cannot see odd lobes (three- or five-lobed shapes), or which side is worn.';

export const GAUGE_KINDS: readonly GaugeKind[] = [
  {
    type: 'telescoping',
    kind: 'two-point',
    name: 'Telescoping gauge and micrometer',
    resolution: 0.0025,
    repeatability: 0.01,
    reach: 120,
    longest: 300,
    blindTo: NO_SIDE,
  },
  {
    type: 'dial-bore',
    kind: 'two-point',
    name: 'Dial bore gauge',
    resolution: 0.0025,
    repeatability: 0.004,
    reach: 150,
    longest: 400,
    blindTo: NO_SIDE,
  },
  {
    type: 'caliper',
    kind: 'two-point',
    name: 'Caliper, inside jaws',
    resolution: 0.01,
    repeatability: 0.025,
    reach: 16,
    longest: 20,
    blindTo: `${NO_SIDE} Its jaws do not reach past the first 16 mm (5/8 in).`,
  },
  {
    type: 'stick',
    kind: 'two-point',
    name: 'Home-made stick gauge and micrometer',
    resolution: 0.0025,
    repeatability: 0.013,
    reach: 100,
    longest: 300,
    blindTo: NO_SIDE,
  },
  {
    type: 'outside-micrometer',
    kind: 'two-point',
    name: 'Outside micrometer',
    resolution: 0.0025,
    repeatability: 0.004,
    reach: 1000,
    longest: 1000,
    blindTo: NO_SIDE,
  },
  {
    type: 'three-leg',
    kind: 'three-leg',
    name: 'Three-leg self-centring micrometer',
    resolution: 0.0025,
    repeatability: 0.004,
    reach: 100,
    longest: 300,
    blindTo: 'It cannot see an oval: it reads the mean of it at every turn.',
  },
  {
    type: 'indicator',
    kind: 'sweep',
    name: 'Dial indicator, swept',
    resolution: 0.01,
    repeatability: 0.005,
    reach: 75,
    longest: 200,
    blindTo: 'It cannot see the size, or where the centre is.',
  },
  {
    type: 'wall-caliper',
    kind: 'wall',
    name: 'Wall thickness, by caliper',
    resolution: 0.01,
    repeatability: 0.025,
    reach: 40,
    longest: 60,
    blindTo: 'It sees the worn side only as truly as the boss is round and concentric outside.',
  },
  {
    type: 'centred-pin',
    kind: 'radius',
    name: 'Radius, from a pin centred in the good end',
    resolution: 0.01,
    repeatability: 0.008,
    reach: 100,
    longest: 300,
    blindTo: 'It sees everything, as truly as the pin is centred and straight.',
  },
  {
    type: 'between-centres',
    kind: 'radius',
    name: 'Radius between centres, by an indicator set on a known size',
    resolution: 0.01,
    repeatability: 0.008,
    reach: 1000,
    longest: 1000,
    blindTo: 'It sees everything, as truly as the centres are.',
  },
  {
    type: 'points',
    kind: 'radius',
    name: 'Points from a scanner or measuring arm',
    resolution: 0.001,
    repeatability: 0.02,
    reach: 300,
    longest: 2000,
    blindTo: 'It sees everything that it points at.',
  },
];

const OUTSIDE: ReadonlySet<GaugeType> = new Set(['outside-micrometer', 'between-centres']);

/** Those that get at a pin or the outside of a bushing, or into a hole. */
export function gaugeKindsFor(kind: Feature['kind']): readonly GaugeKind[] {
  const outside = kind === 'pin' || kind === 'bushing-outside';
  return GAUGE_KINDS.filter(({ type }) => OUTSIDE.has(type) === outside);
}

/** What stands for a gauge of no stated type: the most usual of its kind, the least trusted where in doubt. */
const USUAL: Readonly<Record<Instrument, GaugeType>> = {
  'two-point': 'telescoping',
  'three-leg': 'three-leg',
  sweep: 'indicator',
  wall: 'wall-caliper',
  radius: 'centred-pin',
};

export function gaugeKind(type: GaugeType): GaugeKind {
  return GAUGE_KINDS.find((one) => one.type === type)!;
}

/** The generic gauge whose typical figures stand in for this one's. */
export function kindOfGauge(gauge: Gauge): GaugeKind {
  const typed = gauge.type === undefined ? undefined : gaugeKind(gauge.type);
  return typed?.kind === gauge.kind ? typed : gaugeKind(USUAL[gauge.kind]);
}

/** A figure of a gauge, mm, and whether it was stated for this gauge or is typical of its kind. */
export interface GaugeFigure {
  readonly mm: number;
  readonly stated: boolean;
}

export interface GaugeFigures {
  readonly resolution: GaugeFigure;
  readonly repeatability: GaugeFigure;
  readonly reach: GaugeFigure;
}

/** The figures that count: the gauge's own where given, understood and above zero, else typical ones. */
export function gaugeFigures(gauge: Gauge): GaugeFigures {
  const typical = kindOfGauge(gauge);
  const figure = (key: keyof GaugeFigures): GaugeFigure => {
    const mm = lengthMm(gauge[key]);
    return mm > 0 ? { mm, stated: true } : { mm: typical[key], stated: false };
  };
  return {
    resolution: figure('resolution'),
    repeatability: figure('repeatability'),
    reach: figure('reach'),
  };
}

/**
 * One standard deviation of a reading: its own where it states one, else the gauge's repeatability and the step that it
 * shows. A step q leaves anything within q as likely: a uniform distribution, standard deviation q / sqrt(12) (JCGM
 * 100:2008, 4.3.7 and F.2.2.1).
 */
export function readingSd(gauge: Gauge, reading?: Pick<Reading, 'sd'>): GaugeFigure {
  const own = lengthMm(reading?.sd);
  if (own >= 0) return { mm: own, stated: true };
  const { repeatability, resolution } = gaugeFigures(gauge);
  const mm = Math.hypot(repeatability.mm, resolution.mm / Math.sqrt(12));
  return { mm, stated: repeatability.stated };
}

/** True where every reading stands for many points of a scanner, and says how well it is known: nobody typed it. */
export function standForMany(gauges: readonly Gauge[], readings: readonly Reading[]): boolean {
  const scanners = new Set(gauges.filter(({ type }) => type === 'points').map(({ id }) => id));
  return readings.every(({ gauge, sd }) => sd !== undefined && scanners.has(gauge));
}
