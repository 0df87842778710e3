/** The bore's size at one depth in a sentence. */
import type { SurveyEvaluation } from '../evaluate.ts';
import { formatDepth } from '../job/units.ts';
import { acrossGive, measuredAt } from './acrossGive.ts';
import { type ProfileFigure, sizesAt } from './profileFigure.ts';
import type { Units } from './steps.ts';
import { written } from './written.ts';

/** @param z mm from face A; null: no depth is pointed at */
export function profileSentence(survey: SurveyEvaluation, z: number | null, units: Units): string {
  if (z === null) return 'Size from the rim, at the left, to the bottom, across.';
  const where = `${formatDepth(z, units)} deep`;
  const told = measuredAt(survey, z);
  const { least, mean, greatest } =
    told === undefined
      ? sizesAt(survey, z)
      : {
          least: told.least.diameter,
          mean: told.meanDiameter,
          greatest: told.greatest.diameter,
        };
  if (!Number.isFinite(mean)) return `${where}: not known.`;
  const { bare, plain } = written(units, acrossGive(survey, z));
  return `${where}: least ${bare(least)}, mean ${bare(mean)}, greatest ${plain(greatest)}, across.`;
}

/** What is drawn besides the named lines. */
export function lineWords({ fitted, seats, measured }: ProfileFigure): string {
  const said = [
    measured.length > 0 && 'bars: least to greatest where measured',
    fitted.length > 0 && 'wide grey line: the plain shape that fits the means best',
    seats.length > 0 && 'thick line below: where the bushing sits',
  ].filter((one) => one !== false);
  const text = said.join('; ');
  return text === '' ? '' : `${text[0]!.toUpperCase()}${text.slice(1)}.`;
}
