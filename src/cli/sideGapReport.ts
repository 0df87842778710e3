/** The room beside a boss along the pin, as the report names it. mm; not known is null. */
import * as v from 'valibot';
import type { SideStack } from '../evaluate/fit/sideStack.ts';
import { layerName, sideGapMissing, sideGapWords } from '../figures/sideGapWords.ts';
import type { Units } from '../job/schema.ts';
import { orNull } from './heatReport.ts';

const Num = v.nullable(v.number());
const Range = v.strictObject({ least: Num, greatest: Num });

/** Both sides together. */
export const SideGapSchema = v.strictObject({
  now: Range,
  after: Range,
  wanted: v.strictObject({ least: v.number(), most: v.number() }),
  layers: v.array(
    v.strictObject({
      face: v.picklist(['A', 'B']),
      name: v.string(),
      thickness: Num,
      when: v.picklist(['now', 'after', 'both']),
    }),
  ),
  /** Face shims beside each face, thickest first; null: none is needed, or none goes in. */
  shims: v.nullable(
    v.strictObject({ A: v.array(v.number()), B: v.array(v.number()), left: Range }),
  ),
  words: v.array(v.string()),
});
type SideGapReport = v.InferOutput<typeof SideGapSchema>;

export function sideGapReport(found: SideStack, units: Units): SideGapReport {
  const { now, after, facts, layers, shims } = found;
  return {
    now: range(now),
    after: range(after),
    wanted: { least: facts.least.mm, most: facts.most.mm },
    layers: layers.map((one) => ({
      face: one.face,
      name: layerName(one),
      thickness: orNull(one.thickness),
      when: one.when,
    })),
    shims: shims && { A: [...shims.A], B: [...shims.B], left: range(shims.left) },
    words: [...sideGapWords(found, units), ...sideGapMissing(found)],
  };
}

function range({ least, greatest }: SideStack['now']) {
  return { least: orNull(least), greatest: orNull(greatest) };
}
