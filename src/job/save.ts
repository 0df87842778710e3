/** A job as the text of its file. */
import { Job } from './schema.ts';

const LINE = 100;

/** As much of a schema as is needed to put keys in its order. */
interface Shape {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Shape>>;
  readonly item?: Shape;
  readonly wrapped?: Shape;
}

/**
 * JSON with its keys in the order of the schema (format and version first), whatever order they were set in;
 * what fits on a line stands on one line, and so do rows of numbers. The same job gives the same text.
 */
export function saveJob(job: Job): string {
  return `${written(ordered(Job as unknown as Shape, job), 0)}\n`;
}

function ordered(shape: Shape, value: unknown): unknown {
  if (shape.wrapped !== undefined) return ordered(shape.wrapped, value);
  if (Array.isArray(value) && shape.item !== undefined) {
    const { item } = shape;
    return value.map((one) => ordered(item, one));
  }
  if (shape.entries === undefined || typeof value !== 'object' || value === null) return value;
  const from = value as Record<string, unknown>;
  const keys = Object.keys(shape.entries).filter((key) => from[key] !== undefined);
  return Object.fromEntries(keys.map((key) => [key, ordered(shape.entries![key]!, from[key])]));
}

function written(value: unknown, indent: number): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const parts = Array.isArray(value)
    ? value.map((one) => written(one, indent + 2))
    : Object.entries(value).map(
        ([key, one]) => `${JSON.stringify(key)}: ${written(one, indent + 2)}`,
      );
  const [open, close, space] = Array.isArray(value) ? ['[', ']', ''] : ['{', '}', ' '];
  if (parts.length === 0) return open + close;
  const numbers = Array.isArray(value) && value.every((one) => typeof one === 'number');
  const length = parts.reduce((sum, part) => sum + part.length + 2, indent + 4);
  if (numbers || (length <= LINE && !parts.some((part) => part.includes('\n')))) {
    return `${open}${space}${parts.join(', ')}${space}${close}`;
  }
  const pad = ' '.repeat(indent);
  return `${open}\n${parts.map((part) => `${pad}  ${part}`).join(',\n')}\n${pad}${close}`;
}
