/**
 * A made-up bore as the drawings take one: its own wall, exactly known, counted from its new size. Nothing is inferred
 * from readings here, so the picture is the shape itself.
 */
import type { BoreFacts, SurveyEvaluation } from '../evaluate.ts';
import type { Truth } from './wear.ts';

const COLUMNS = 144;
const ROWS = 81;

export interface MadeBore {
  readonly survey: SurveyEvaluation;
  readonly facts: BoreFacts;
}

/** @param radius when new; mm, as `length` */
export function madeBore(truth: Truth, radius: number, length: number): MadeBore {
  const theta = Float64Array.from({ length: COLUMNS }, (_, i) => (2 * Math.PI * i) / COLUMNS);
  const z = Float64Array.from({ length: ROWS }, (_, i) => (length * i) / (ROWS - 1));
  const mean = new Float64Array(COLUMNS * ROWS);
  for (let k = 0; k < mean.length; k++) {
    mean[k] = truth(theta[k % COLUMNS]!, z[Math.floor(k / COLUMNS)]!);
  }
  const known = new Float64Array(mean.length);
  const deviation = mean.map((r) => r - radius);
  const none = { volume: 0, mass: 0, sureMass: 0, possibleMass: 0 };
  return {
    facts: madeFacts(radius, length),
    survey: {
      ...NOTHING_READ,
      surface: {
        grid: { theta, z },
        mean,
        sd: known,
        sdSeen: known,
        smoothness: { lobe: 0, size: 0, length, local: 0, noise: 1, fixed: true },
        seenLobes: [],
        predicted: new Float64Array(0),
      },
      target: {
        diameter: 2 * radius,
        axis: { x: 0, y: 0, leanX: 0, leanY: 0 },
        centreRule: 'by-hand',
        assumed: null,
      },
      removal: {
        deviation,
        sd: known,
        likely: known,
        sure: known,
        possible: known,
        firstPass: known,
        ...none,
      },
    },
  };
}

const NOTHING_READ: Omit<SurveyEvaluation, 'surface' | 'target' | 'removal'> = {
  id: 'made-up',
  name: 'Made up',
  stage: 'as-found',
  status: 'ok',
  sightings: [],
  sections: [],
  profile: null,
  axis: null,
  ovalTurn: null,
  patterns: { named: [], open: [] },
  plugs: null,
  temperature: null,
  checks: [],
  blindSpots: [],
  next: { readings: [], setups: [] },
  zones: [],
  seating: null,
  notes: [],
};

function madeFacts(radius: number, length: number): BoreFacts {
  const typed = (mm: number) => ({ mm, from: Number.isNaN(mm) ? 'missing' : 'typed' }) as const;
  return {
    nominal: typed(2 * radius),
    length: typed(length),
    bossOutside: typed(Number.NaN),
    bushingOutside: typed(Number.NaN),
    pressFit: typed(Number.NaN),
    clearance: typed(Number.NaN),
    seats: [{ from: 0, to: length }],
    keepouts: [],
    load: Number.NaN,
  };
}
