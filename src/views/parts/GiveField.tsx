/** A give-or-take edited in a sentence: said as "within so much, nearly always", stored as one standard deviation. */
import { doubled, giveOf, halved } from '../../job/give.ts';
import type { Typed, Units } from '../../job/schema.ts';
import { LengthField } from './LengthField.tsx';

export interface GiveFieldProps {
  readonly label: string;
  /** One standard deviation, as stored. */
  readonly typed: Typed | undefined;
  /** What stands where nothing is typed: one standard deviation, mm. */
  readonly usualMm: number;
  readonly units: Units;
  onEnter(typed: Typed | undefined): void;
}

export function GiveField({ label, typed, usualMm, units, onEnter }: GiveFieldProps) {
  return (
    <LengthField
      label={`${label}, give or take, two standard deviations`}
      typed={typed && doubled(typed, units)}
      usual={giveOf(usualMm, units)}
      units={units}
      onEnter={(give) => onEnter(give && halved(give, units))}
    />
  );
}
