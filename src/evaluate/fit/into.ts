/**
 * What goes into which wall of a bore, and how it sits there once it is pressed in: found once while nothing changes but
 * temperatures, limits and the pin.
 */
import type { BoreEvaluation, SurveyEvaluation } from '../../evaluate.ts';
import { pressFacts } from '../../job/pressFacts.ts';
import type { Job } from '../../job/schema.ts';
import type { Shop } from '../../job/shop.ts';
import { metalUsed } from './material.ts';
import { type RoundPart, roundPart } from './round.ts';
import { type FitMatter, fitMatter, type Seated, seatedOf } from './seated.ts';

export interface Into {
  readonly matter: FitMatter;
  readonly seated: readonly Seated[];
}

/** Of each survey what was last found, and of what: temperatures, limits and metals have no part in it. */
const known = new WeakMap<
  SurveyEvaluation,
  Into & { readonly key: string; readonly shop: Shop | null }
>();

/** @returns null where the survey has no target or no seat */
export function intoOf(
  job: Job,
  bore: BoreEvaluation,
  survey: SurveyEvaluation,
  shop: Shop | null,
): Into | null {
  const feature = job.features.find(({ id }) => id === bore.id);
  if (feature === undefined) return null;
  const { surveys, issued, sideGap, ...typed } = feature;
  const { fit, ...decisions } = typed.decisions;
  const key = JSON.stringify([job.units, { ...typed, decisions }, fit?.wall, bore.facts]);
  const before = known.get(survey);
  if (before?.key === key && before.shop === shop) {
    return { matter: { ...before.matter, job, feature, bore }, seated: before.seated };
  }
  const matter = fitMatter(job, bore, survey, shop);
  if (matter === null) return null;
  const into = { matter, seated: seatedOf(matter) };
  known.set(survey, { ...into, key, shop });
  return into;
}

const knownRound = new WeakMap<Seated, { readonly key: string; readonly part: RoundPart }>();

/** Where one of these bushings presses, and the shape of its own bore. */
export function roundOf({ job, feature }: FitMatter, seated: Seated): RoundPart {
  const elastic = (text: string | undefined, of: 'bushing' | 'boss') => {
    const { elastic: modulus, poisson } = metalUsed(job, text, of).material;
    return { elastic: modulus, poisson };
  };
  const bushing = elastic(seated.material, 'bushing');
  const boss = elastic(seated.boss.material, 'boss');
  const loss = pressFacts(feature).loss.mm;
  const key = JSON.stringify([bushing, boss, loss]);
  const before = knownRound.get(seated);
  if (before?.key === key) return before.part;
  const part = roundPart({ seated, bushing, boss, loss });
  knownRound.set(seated, { key, part });
  return part;
}
