/** What temperatures did to the readings, and whether they may be trusted: plain sentences. */
import type { Remark } from '../bore/types.ts';
import type { Units } from '../job/schema.ts';
import { inDegrees, type TemperatureFacts } from '../job/temperature.ts';
import { written } from './written.ts';

/** None where no temperature is given. */
export function temperatureRemarks(facts: TemperatureFacts | null, units: Units): Remark[] {
  if (facts === null) return [];
  const { part, gauge } = facts;
  if (Number.isNaN(part) || Number.isNaN(gauge)) return [unfinished(part, gauge), ...trust(facts)];
  return [correction(facts, units), ...trust(facts)];
}

function unfinished(part: number, gauge: number): Remark {
  const missing = [
    ...(Number.isNaN(part) ? ['the part’s'] : []),
    ...(Number.isNaN(gauge) ? ['the gauge’s'] : []),
  ].join(' and ');
  return {
    kind: 'missing',
    text: `Of the temperatures ${missing} is missing: until both stand, nothing is corrected.`,
  };
}

function correction(facts: TemperatureFacts, units: Units): Remark {
  const degrees = (celsius: number) =>
    `${inDegrees(celsius, facts.unit).toFixed(0)} °${facts.unit}`;
  const { metal } = facts;
  const taken = metal.named ? metal.name : `taken for ${metal.name}`;
  const at = `The part (${taken}) is at ${degrees(facts.part)}, the gauge at ${degrees(facts.gauge)}`;
  const size = Math.abs(facts.correction);
  const asNew = `the bushing’s and the pin’s sizes are taken as read at ${degrees(20)}.`;
  if (Number.isNaN(size)) {
    return {
      kind: 'finding',
      text: `${at}: every reading is brought to its size at ${degrees(20)}; ${asNew}`,
    };
  }
  const { plain } = written(units, facts.giveOrTake);
  const what =
    Number(plain(size).split(' ')[0]) === 0
      ? `to their sizes at ${degrees(20)} the readings lack nothing that could be read`
      : `${plain(size)} across was ${facts.correction < 0 ? 'taken off' : 'added to'} every reading, to its size at ${degrees(20)}`;
  return {
    kind: 'finding',
    text: `${at}: ${what}, give or take ${plain(facts.giveOrTake)}, the same for all of them; ${asNew}`,
  };
}

function trust({ trust: how }: TemperatureFacts): Remark[] {
  if (how === 'yes') return [];
  const text =
    how === 'warm'
      ? 'Part and gauge differ by more than 5 °C (9 °F): let them come to one temperature, and read the first places again.'
      : 'Too warm to trust: the part is more than 30 °C (54 °F) from 20 °C, or more than 15 °C (27 °F) from the gauge, and ' +
        'hardly as warm all through. Do not grind by these sizes: let it cool, and measure again.';
  return [{ kind: 'warning', text }];
}
