/** Places in a job, in the words of the repairer: `bore “heel”, survey “As found”, reading 4`. */

/** What stands before a name or a number, for each list that a job has. */
const LIST_WORDS: Readonly<Record<string, string>> = {
  gauges: 'gauge',
  tools: 'tool',
  stock: 'stock',
  rates: 'rate',
  squeezes: 'heat squeeze',
  features: 'bore',
  surveys: 'survey',
  setups: 'set-up',
  readings: 'reading',
  bushings: 'bushing',
  keepouts: 'place to leave alone',
  lands: 'running stretch',
  issued: 'issued pass',
  diameters: 'pin diameter',
  outside: 'outside diameter',
  depths: 'depth',
  clocks: 'clock position',
  rim: 'face reading',
};

const KIND_WORDS: Readonly<Record<string, string>> = {
  bore: 'bore',
  pin: 'pin',
  'bushing-inside': 'bushing',
  'bushing-outside': 'bushing',
};

const SHOWN = 40;

/** Text in quotation marks, cut where it is long. */
export function quoted(text: string): string {
  const cut = text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text;
  return `“${cut}”`;
}

/** One entry of a list: by its name where it has one, else by its number from 1. */
export function entryWords(list: string, entry: unknown, index: number): string {
  const word = LIST_WORDS[list] ?? `entry of “${list}”`;
  if (typeof entry !== 'object' || entry === null) return `${word} ${index + 1}`;
  const { kind, name, title } = entry as Record<string, unknown>;
  const own = typeof name === 'string' ? name : title;
  const of = list === 'features' && typeof kind === 'string' ? (KIND_WORDS[kind] ?? word) : word;
  return typeof own === 'string' && own.trim() !== ''
    ? `${of} ${quoted(own)}`
    : `${of} ${index + 1}`;
}

/** A path in the saved text, in words: the named places, then the field as it is written. */
export function pathWords(data: unknown, path: readonly (string | number)[]): string {
  const places: string[] = [];
  let fields: string[] = [];
  let here: unknown = data;
  path.forEach((key, depth) => {
    const list = path[depth - 1];
    here = own(here, key);
    if (typeof key === 'number' && typeof list === 'string' && list in LIST_WORDS) {
      fields.pop();
      places.push([...fields, entryWords(list, here, key)].join(' '));
      fields = [];
    } else {
      fields.push(typeof key === 'number' ? `[${key + 1}]` : key);
    }
  });
  const field = fields.join('.').replace(/\.\[/g, '[');
  return [...places, ...(field === '' ? [] : [quoted(field)])].join(', ');
}

function own(of: unknown, key: string | number): unknown {
  if (typeof of !== 'object' || of === null || !Object.hasOwn(of, key)) return undefined;
  return (of as Record<string | number, unknown>)[key];
}
