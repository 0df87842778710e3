/** What a job says of a pin or shaft, as millimetres: running stretches, running clearance, what is decided of it. */
import { defaultClearanceMm } from './defaults.ts';
import type { Known, Span } from './facts.ts';
import type { Decisions, Feature, Job } from './schema.ts';
import { lengthMm } from './units.ts';
import { wayFigureMm } from './wayFigures.ts';

/** Depths from face A. */
export interface LandFacts extends Span {
  /** '' where none is stated and the whole pin is one. */
  readonly id: string;
  readonly name: string;
  readonly runsIn: string | null;
}

type OfPin = NonNullable<Decisions['pin']>;

export interface PinFacts {
  /** One over the whole length where none is stated. */
  readonly lands: readonly LandFacts[];
  /** Stretches whose depths cannot be used, by name. */
  readonly unusable: readonly string[];
  readonly clearance: Known;
  /** Finished size as typed, across; NaN: not. */
  readonly finished: number;
  readonly newSize: number;
  readonly skin: NonNullable<OfPin['skin']> | null;
  readonly way: NonNullable<OfPin['way']> | null;
  readonly centres: NonNullable<OfPin['centres']> | null;
  /** Size to be turned down to, across; NaN: not stated. */
  readonly smaller: number;
  /** What may stay short, per side; and what may be turned off its size, across. */
  readonly acceptLow: number;
  readonly turnDownMost: number;
}

/** @param length of the pin, mm */
export function pinFacts(job: Job, feature: Feature, length: number): PinFacts {
  const { decisions, wanted, lands = [] } = feature;
  const { pin = {} } = decisions;
  const stated = lands.map((land) => {
    const [a, b] = [lengthMm(land.from), lengthMm(land.to)].map((z) =>
      land.face === 'A' ? z : length - z,
    ) as [number, number];
    return {
      id: land.id,
      name: land.name,
      runsIn: land.runsIn ?? null,
      from: Math.max(0, Math.min(a, b)),
      to: Math.min(length, Math.max(a, b)),
    };
  });
  const usable = stated.filter(({ from, to }) => to > from);
  const newSize = positive(lengthMm(feature.nominal));
  const finished = positive(lengthMm(decisions.target));
  const typed = lengthMm(wanted.clearance);
  const usual = defaultClearanceMm(Number.isNaN(finished) ? newSize : finished);
  const figure = (key: 'acceptLow' | 'turnDownMost') => wayFigureMm(decisions, key, job.units);
  return {
    lands: stated.length > 0 ? usable : [{ id: '', name: '', runsIn: null, from: 0, to: length }],
    unusable: stated.filter(({ from, to }) => !(to > from)).map(({ name }) => name),
    clearance:
      typed >= 0
        ? { mm: typed, from: 'typed' }
        : { mm: usual, from: Number.isNaN(usual) ? 'missing' : 'default' },
    finished,
    newSize,
    skin: pin.skin ?? null,
    way: pin.way ?? null,
    centres: pin.centres ?? null,
    smaller: positive(lengthMm(pin.smaller)),
    acceptLow: figure('acceptLow'),
    turnDownMost: figure('turnDownMost'),
  };
}

function positive(mm: number): number {
  return mm > 0 ? mm : Number.NaN;
}
