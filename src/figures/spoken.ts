/** Readings and places as a shop calls them out: digit by digit, clock hours as words. */

const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const HOURS = [...DIGITS.slice(1), 'ten', 'eleven', 'twelve'];

/** `2.0014` is “two point zero zero one four”; signs, `;` between tries and a unit are called too. */
export function sayReading(text: string): string {
  return text
    .split(';')
    .map((part) => callOut(part.trim()))
    .filter((part) => part !== '')
    .join('; and ');
}

function callOut(text: string): string {
  return text
    .replace(/["″”]/g, ' inches ')
    .replace(/mm\b/g, ' millimetres ')
    .replace(/in\b\.?/g, ' inches ')
    .replace(/(?<=\d)\s+(?=\d)/g, ' and ')
    .replace(/\//g, ' over ')
    .replace(/[.,](?=\d)/g, ' point ')
    .replace(/\+/g, ' plus ')
    .replace(/[-−–]/g, ' minus ')
    .replace(/\d/g, (digit) => ` ${DIGITS[Number(digit)]} `)
    .replace(/\s+/g, ' ')
    .trim();
}

/** `2–8` is “two, eight”, `1:30–7:30` “one thirty, seven thirty”; degrees digit by digit. */
export function sayClock(text: string): string {
  return text.split('–').map(sayHour).join(', ');
}

function sayHour(text: string): string {
  const found = /^(\d{1,2})(?::(\d\d))?$/.exec(text.trim());
  const hour = HOURS[Number(found?.[1]) - 1];
  if (found === null || hour === undefined) return callOut(text.replace(/[d°]$/, ' degrees '));
  const minutes = found[2];
  if (minutes === undefined || minutes === '00') return hour;
  if (minutes === '15') return `${hour} fifteen`;
  if (minutes === '30') return `${hour} thirty`;
  if (minutes === '45') return `${hour} forty-five`;
  return `${hour} ${callOut(minutes)}`;
}

export interface Spot {
  /** `2–8`, as the head of the column. */
  readonly clock: string;
  /** `0.65`, as the head of the row. */
  readonly depth: string;
}

/** What is said once a reading is in: itself, then the next place, its depth only where that is another. */
export function sayAccepted(text: string, here: Spot, next: Spot | null): string {
  const read = text.trim() === '' ? 'left empty' : sayReading(text);
  if (next === null) return `${read}. That was the last.`;
  const depth = next.depth === here.depth ? '' : `, at ${callOut(next.depth)} deep`;
  return `${read}. Next: ${sayClock(next.clock)}${depth}.`;
}

export function sayDoubt({ clock, depth }: Spot): string {
  return `Check ${sayClock(clock)}, at ${callOut(depth)} deep.`;
}
