/** The job's story in four plain steps, for the person who pays: new, worn, what is done, done. */
import type { BoreEvaluation, Evaluation } from '../evaluate.ts';
import { gaugeFigures } from '../job/gauges.ts';
import type { Feature, Job } from '../job/schema.ts';
import { gaugeOf } from '../job/sizes.ts';
import { middleOfField } from './steps.ts';
import { type Chapters, chaptersOf } from './storyChapters.ts';
import { sayDone, sayWork } from './storyDone.ts';
import { type StoryPicture, storyPictures } from './storyPicture.ts';
import type { Step, Told } from './storyTypes.ts';
import { sayNew, sayWorn } from './storyWorn.ts';
import { written } from './written.ts';

export interface StoryStep extends Told {
  readonly step: Step;
  /** `New`, `Worn`, `The work`, `Done`. */
  readonly title: string;
  /** Null where nothing can be drawn yet. */
  readonly picture: StoryPicture | null;
}

export interface Story {
  readonly steps: readonly StoryStep[];
  readonly chapters: Chapters;
  /** What the figures rest on, one sentence each. */
  readonly basis: readonly string[];
}

const TITLES: Readonly<Record<Step, string>> = {
  new: 'New',
  worn: 'Worn',
  work: 'The work',
  done: 'Done',
};
const STEPS = ['new', 'worn', 'work', 'done'] as const satisfies readonly Step[];

/** What stands under the story wherever it leaves the shop. */
export const STORY_CAUTION =
  'This is a plan from readings taken by hand, and no certificate. The machine maker’s limits, local codes and whoever is ' +
  'licensed to sign for the part come first. Parts that carry people, hang overhead or go on the road are signed for ' +
  'before they go back to work.';

export function storyOf(
  job: Job,
  feature: Feature,
  bore: BoreEvaluation,
  joint: Evaluation['joint'] | null,
): Story {
  const { units } = job;
  const { facts } = bore;
  const chapters = chaptersOf(feature, bore);
  const told: Readonly<Record<Step, Told>> = {
    new: sayNew(facts, feature, units),
    worn: sayWorn(chapters.worn, facts, facts.length.mm, joint, units),
    work: sayWork(chapters, facts, feature, units),
    done: sayDone(chapters, facts, feature, units),
  };
  const pictures = storyPictures(chapters, facts, feature);
  return {
    chapters,
    steps: STEPS.map((step) => ({
      step,
      title: TITLES[step],
      ...told[step],
      picture: pictures[step],
    })),
    // Worked out where it is asked for: paper alone wants it, and it takes longer than all the rest.
    get basis() {
      return basisOf(job, chapters);
    },
  };
}

/** Of each survey that the story is told from: how many readings, with what, when, and how well the wall is known. */
function basisOf({ gauges, units }: Job, { worn, work, after }: Chapters): string[] {
  const told = [...new Set([worn, work, after])].filter((one) => one !== null);
  return told.map(({ typed, seen }) => {
    const used = new Set(typed.readings.map(({ gauge }) => gauge));
    const names = [...used].flatMap((id) => {
      const gauge = gaugeOf(gauges, id);
      if (gauge === undefined) return [];
      const { repeatability } = gaugeFigures(gauge);
      const { bare } = written(units, Number.NaN);
      return [
        `${gauge.name} (repeats to ${bare(repeatability.mm)} ${units}, one standard deviation)`,
      ];
    });
    const when = typed.when === undefined ? '' : `, ${typed.when}`;
    const count = seen.sightings.length;
    const { removal, surface, target } = seen;
    const spread = removal?.sd ?? surface?.sdSeen;
    const give = spread === undefined ? Number.NaN : 2 * middleOfField(spread);
    const known = Number.isNaN(give)
      ? ''
      : ` The wall is known to ${written(units, give).perSide(give)} give or take, at most places.`;
    const assumed =
      target === null || target.assumed === null ? '' : ` Assumed: ${target.assumed}.`;
    return `“${typed.name}”${when}: ${count} reading${count === 1 ? '' : 's'}, ${names.join(' and ')}.${known}${assumed}`;
  });
}
