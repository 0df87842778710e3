/** The temperatures of part and gauge from the command line. */
import type { Survey } from '../job/schema.ts';
import { readTemperature } from '../job/temperature.ts';
import { type Options, UsageError } from './usage.ts';

/** As a job keeps it, in one unit; both or none, as one alone corrects nothing. */
export function temperatureOption(options: Options): Survey['temperature'] {
  const { 'part-temp': part, 'gauge-temp': gauge } = options;
  if (part === undefined && gauge === undefined) return undefined;
  if (part === undefined || gauge === undefined) {
    const given = part === undefined ? 'gauge' : 'part';
    const other = part === undefined ? 'part' : 'gauge';
    throw new UsageError(`--${given}-temp needs --${other}-temp as well: both change the size.`);
  }
  const read = ([name, text]: readonly [string, string]) => {
    const celsius = readTemperature(text, 'C');
    if (celsius.ok && /[cf]\s*$/i.test(text)) return text;
    const why = celsius.ok ? 'say whether C or F, such as 27C or 80F' : celsius.why;
    throw new UsageError(`--${name} ${text}: ${why || 'type a number such as 27C or 80F'}.`);
  };
  return {
    part: read(['part-temp', part]),
    gauge: read(['gauge-temp', gauge]),
    unit: unitIn(part),
  };
}

function unitIn(text: string): 'C' | 'F' {
  return /f\s*$/i.test(text) ? 'F' : 'C';
}
