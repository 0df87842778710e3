/** The shop document: what is at hand and what was learned, kept beside the jobs. As typed, like a job. */
import * as v from 'valibot';
import { Gauge, ToolKind, Typed } from './schema.ts';

const Id = v.pipe(v.string(), v.minLength(1), v.maxLength(80));
const Name = v.pipe(v.string(), v.maxLength(200));

export const SHOP_FORMAT = 'roundhand-shop';
export const SHOP_VERSION = 1;

export const Machine = v.picklist(['torch', 'welder', 'boring-bar', 'lathe']);
export type Machine = v.InferOutput<typeof Machine>;

export const Shop = v.strictObject({
  format: v.literal(SHOP_FORMAT),
  version: v.literal(SHOP_VERSION),
  /** At hand for any job; left out: nobody has said, and a job's own and a dial indicator are taken to be. */
  gauges: v.optional(v.array(Gauge)),
  /** Grinding tools: what they can reach and how much one pass takes. */
  tools: v.array(
    v.strictObject({
      id: Id,
      name: Name,
      kind: ToolKind,
      radius: v.optional(Typed),
      width: v.optional(Typed),
      bite: v.optional(Typed),
    }),
  ),
  /** What else is there to work with; left out: nobody has said. */
  machines: v.optional(v.array(Machine)),
  stock: v.array(v.strictObject({ id: Id, name: Name, thickness: Typed })),
  /** What this hand takes off with a tool in one pass, per side. */
  rates: v.array(v.strictObject({ tool: Id, perPass: Typed, passes: v.number() })),
  /** Heat squeezes done: how far the jaws moved while it was hot, how much stayed cold, across. */
  squeezes: v.array(
    v.strictObject({
      when: v.pipe(v.string(), v.maxLength(40)),
      asked: Typed,
      came: Typed,
      /** Mean diameter before and after, cold. */
      meanBefore: v.optional(Typed),
      meanAfter: v.optional(Typed),
      /** The same by clock position, across. */
      across: v.optional(
        v.pipe(
          v.array(
            v.strictObject({
              clock: v.pipe(v.string(), v.maxLength(20)),
              before: Typed,
              after: Typed,
            }),
          ),
          v.maxLength(24),
        ),
      ),
      note: Name,
    }),
  ),
});
export type Shop = v.InferOutput<typeof Shop>;
