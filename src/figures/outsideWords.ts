/** What the readings of a pin or of a bushing's outside show, in plain sentences. */
import type { Section } from '../bore/types.ts';
import type { SurveyEvaluation } from '../evaluate.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth } from '../job/units.ts';
import { nearPair } from './nearClock.ts';
import { outOfRoundGive } from './sectionGive.ts';
import { type Sentence, said } from './sentence.ts';
import { written } from './written.ts';

export function outsideSentences(
  { sections, profile }: SurveyEvaluation,
  length: number,
  units: Units,
): Sentence[] {
  if (sections.length === 0) return [];
  return [
    roundness(sections, units),
    ...along(sections, units),
    ...tapered(profile, length, units),
  ];
}

function roundness(sections: readonly Section[], units: Units): Sentence {
  const worst = sections.reduce((a, b) => (b.outOfRound > a.outOfRound ? b : a));
  const give = outOfRoundGive(worst);
  const { plain, bare } = written(units, give);
  const doubt = `give or take ${bare(give)}`;
  const deep = `${formatDepth(worst.z, units)} deep`;
  if (!(worst.outOfRound > give)) {
    return said(
      'Round, as far as these readings can show: out-of-round is ',
      plain(worst.outOfRound),
      ` across at most, ${deep}, ${doubt}.`,
    );
  }
  return said(
    `Worn one way: across ${nearPair(worst.least.theta)} it is `,
    plain(worst.outOfRound),
    ` thinner than across ${nearPair(worst.greatest.theta)}, ${deep}, ${doubt}.`,
  );
}

/** Thickest against thinnest depth, by their means. */
function along(sections: readonly Section[], units: Units): Sentence[] {
  if (sections.length < 2) return [];
  const thick = sections.reduce((a, b) => (b.meanDiameter > a.meanDiameter ? b : a));
  const thin = sections.reduce((a, b) => (b.meanDiameter < a.meanDiameter ? b : a));
  const give = Math.hypot(thick.give, thin.give);
  const { plain, bare } = written(units, give);
  const less = thick.meanDiameter - thin.meanDiameter;
  if (!(less > give)) {
    return [
      said(
        `Along the depth its mean size stays the same within the give-or-take of ${plain(give)} across.`,
      ),
    ];
  }
  return [
    said(
      `Thinnest ${formatDepth(thin.z, units)} deep, by `,
      plain(less),
      ` across against ${formatDepth(thick.z, units)} deep, on the mean, give or take ${bare(give)}.`,
    ),
  ];
}

function tapered(profile: SurveyEvaluation['profile'], length: number, units: Units): Sentence[] {
  if (profile === null || profile.shape !== 'taper') return [];
  const give = 2 * profile.taperSd * length;
  const { plain, bare } = written(units, give);
  const end = profile.taper > 0 ? 'the far end' : 'face A';
  return [
    said(
      `It thickens evenly towards ${end}: by `,
      plain(Math.abs(profile.taper) * length),
      ` across over its length, give or take ${bare(give)}.`,
    ),
  ];
}
