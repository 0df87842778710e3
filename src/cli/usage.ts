/** The words of the command line, and what a command answers. */

/** What a command says: a fault of the input (exit 1), with what could still be told; or nothing wrong. */
export interface Said {
  readonly out: string;
  readonly fault: string | null;
}

/** The caller's words are off: exit 2. */
export class UsageError extends Error {}

export const OPTIONS = {
  bore: { type: 'string' },
  survey: { type: 'string' },
  json: { type: 'boolean' },
  nominal: { type: 'string' },
  length: { type: 'string' },
  bushing: { type: 'string' },
  'press-fit': { type: 'string' },
  units: { type: 'string' },
  accuracy: { type: 'string' },
  'part-temp': { type: 'string' },
  'gauge-temp': { type: 'string' },
  shop: { type: 'string' },
  feature: { type: 'string' },
  criterion: { type: 'string' },
  filter: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const;

/** What goes with a CSV of readings or points; a job says it itself. */
export const CSV_ONLY = [
  'nominal',
  'length',
  'bushing',
  'press-fit',
  'units',
  'accuracy',
  'part-temp',
  'gauge-temp',
] as const;

export type Options = {
  [K in keyof typeof OPTIONS]?: (typeof OPTIONS)[K]['type'] extends 'string' ? string : boolean;
};
