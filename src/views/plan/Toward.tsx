/** A shift edited in a sentence: how far, and toward which hour of the clock. */
import { useState } from 'react';
import { towardClock } from '../../figures/towardWords.ts';
import { readClock } from '../../job/clock.ts';
import type { Typed, Units } from '../../job/schema.ts';
import { inUnits, lengthMm } from '../../job/units.ts';
import { Field } from '../parts/Field.tsx';
import { LengthField } from '../parts/LengthField.tsx';

interface Props {
  /** What is shifted, for those who cannot see the sentence: `Centre at face A`. */
  readonly label: string;
  /** mm, x to 3 o'clock and y to 12. */
  readonly x: number;
  readonly y: number;
  readonly units: Units;
  onEnter(x: number, y: number): void;
}

export function Toward({ label, x, y, units, onEnter }: Props) {
  // A shift of nothing has no direction: the hour that was typed waits here for its distance.
  const [waiting, setWaiting] = useState<number | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  // What is no length stays as it was typed, and moves nothing.
  const [wrong, setWrong] = useState<Typed | null>(null);
  const far = Math.hypot(x, y);
  const theta = far > 0 ? Math.atan2(x, y) : (waiting ?? 0);
  const put = (mm: number, at: number) => onEnter(mm * Math.sin(at), mm * Math.cos(at));
  const onClock = (text: string) => {
    const read = readClock(text);
    setFault(read.ok || text === '' ? null : read.why);
    if (!read.ok) return;
    if (far > 0) put(far, read.theta);
    else setWaiting(read.theta);
  };
  return (
    <>
      <LengthField
        label={`${label}: how far`}
        typed={wrong ?? { text: inUnits(far, units).toFixed(units === 'in' ? 4 : 3), unit: units }}
        least="none"
        units={units}
        onEnter={(typed) => {
          const mm = typed === undefined ? 0 : lengthMm(typed);
          setWrong(mm >= 0 || typed === undefined ? null : typed);
          if (mm >= 0) put(mm, theta);
        }}
      />{' '}
      toward{' '}
      <Field
        label={`${label}: toward which clock position`}
        value={towardClock(Math.sin(theta), Math.cos(theta))}
        fault={fault}
        onEnter={onClock}
      />
    </>
  );
}
