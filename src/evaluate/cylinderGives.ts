/** How well the cylinders through the measured depth of one survey are known: worked out on demand. */
import { type PlugGives, plugGives } from '../bore/plugGive.ts';
import { evaluate, type Memory } from '../evaluate.ts';
import type { Job } from '../job/schema.ts';
import type { Shop } from '../job/shop.ts';
import type { SurveyOf } from './surveyOf.ts';

export type { PlugGives };

/**
 * @param memory what was worked out of the job itself; it is read and left as it is
 * @returns null where the job holds no such survey of an inside, or it has no cylinders
 */
export function cylinderGives(
  job: Job,
  { bore, survey }: SurveyOf,
  memory: Memory,
  shop: Shop | null = null,
): PlugGives | null {
  const known = new Map(memory);
  const { bores, parts } = evaluate(job, known, 'quick', shop);
  const of = [...bores, ...parts].find(({ id }) => id === bore);
  const plugs = of?.surveys.find(({ id }) => id === survey)?.plugs;
  const shape = known.get(`${bore} ${survey}`)?.shape;
  return plugs?.bore && shape ? plugGives(shape.posterior, plugs.from, plugs.to) : null;
}
