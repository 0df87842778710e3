/** The figures of the section at one depth, written and in a sentence. */
import { formatDepth } from '../job/units.ts';
import { nearPair } from './nearClock.ts';
import type { DrawnCircle, SectionFigure } from './sectionFigure.ts';
import type { Units } from './steps.ts';
import { written } from './written.ts';

export interface SectionWords {
  /** Across, in the job's units, without the unit; '' where the depth is not known. */
  readonly least: string;
  readonly greatest: string;
  readonly sentence: string;
  /** What stands beside the picture. @param exaggeration factor that wear is drawn with */
  short(exaggeration: number): string;
  /** The circles of the picture, what is wanted first: each with its diameter across. */
  readonly circles: readonly {
    readonly kind: 'wanted' | DrawnCircle['kind'];
    readonly name: string;
    readonly diameter: string;
  }[];
}

const NAMES: Readonly<Record<DrawnCircle['kind'], string>> = {
  average: 'average round',
  entering: 'biggest plug that enters here',
  around: 'smallest clean-up here',
};

export function sectionWords(section: SectionFigure, units: Units): SectionWords {
  const { least, greatest, circles, give, about, radius, z } = section;
  const { bare, plain } = written(units, give);
  const usual = written(units, Number.NaN);
  const depth = `${formatDepth(z, units)} deep`;
  if (about === 'change') return changeWords(depth);
  const sentence =
    least === null || greatest === null
      ? `Cut across ${depth}: not known there.`
      : `Cut across ${depth}: greatest ${bare(greatest.diameter)} along ${nearPair(greatest.theta)}, ` +
        `least ${bare(least.diameter)} along ${nearPair(least.theta)}, ` +
        `${plain(greatest.diameter - least.diameter)} out of round, all across.`;
  return {
    least: least === null ? '' : bare(least.diameter),
    greatest: greatest === null ? '' : bare(greatest.diameter),
    sentence,
    short: (exaggeration) =>
      `Cut across ${depth}, wear ×${exaggeration}: ` +
      (least === null || greatest === null
        ? 'not known there.'
        : `${plain(greatest.diameter - least.diameter)} out of round, across.`),
    circles: [
      about === 'target'
        ? { kind: 'wanted', name: 'wanted', diameter: usual.bare(2 * radius) }
        : { kind: 'wanted', name: 'average of the whole wall', diameter: bare(2 * radius) },
      ...circles.map(({ kind, diameter }) => ({
        kind,
        name: NAMES[kind],
        diameter: bare(diameter),
      })),
    ],
  };
}

/** Of what changed there from one stage to another: it has no size of its own. */
function changeWords(depth: string): SectionWords {
  return {
    least: '',
    greatest: '',
    sentence: `Cut across ${depth}: what changed there; the thin circle is no change, outside it metal is gone.`,
    short: (exaggeration) => `Cut across ${depth}: what changed, ×${exaggeration}.`,
    circles: [{ kind: 'wanted', name: 'no change', diameter: '' }],
  };
}
