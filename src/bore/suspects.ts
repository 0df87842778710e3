/**
 * Readings that stand off from what all others predict. The worst comes first and the rest is judged without it, since
 * one bad reading drags its neighbours' predictions and, worse, all that is learned of noise and roughness.
 */
import { design } from './design.ts';
import { leftOutStandOffs, ownInformation, type StandOff, standOffs } from './leaveOneOut.ts';
import { condition, type Posterior } from './posterior.ts';
import { learnForJudging } from './smoothness.ts';
import type { Smoothness } from './types.ts';

/** Beyond this many standard deviations a reading is a suspect. */
const SUSPECT = 6;
/**
 * Worth a second look, with all figures learned anew without it: a bad reading makes the wall look so dented, and the
 * others so rough, that it may stand off by no more than this. Of many sound ones the farthest always does.
 */
const SECOND_LOOK = 2;
/** The most readings taken out one after the other: at most a fifth of them, so that the rest still is the survey. */
const MOST_OUT = 8;
const MOST_SHARE = 0.2;
/** Learning anew is what takes time: so often at most, and once among so many that one spoils little. */
const MOST_LEARNED = 4;
const MANY = 150;
/** With fewer others nothing can be predicted. */
const FEWEST = 5;

export interface Suspects {
  /** Worst first, each against the readings that are not suspected. */
  readonly found: readonly StandOff[];
  /** What was learned without them. */
  readonly smoothness: Smoothness;
}

/**
 * @param learn false: `p`'s smoothness is already that of the sound readings (as while someone types), and is kept
 */
export function findSuspects(p: Posterior, nominalRadius: number, learn: boolean): Suspects {
  const { count } = p.design;
  const worth = learn ? SECOND_LOOK : SUSPECT;
  const mostLearned = !learn ? 0 : count > MANY ? 1 : MOST_LEARNED;
  const most = Math.min(MOST_OUT, Math.floor(MOST_SHARE * count));
  const out: number[] = [];
  let now = p;
  let own = ownInformation(p);
  let learned = 0;
  while (out.length < most && count - out.length > FEWEST) {
    const worst = farthest(standOffs(now, own, out));
    if (!(worst !== undefined && off(worst) > worth)) break;
    out.push(worst.at);
    if (learned >= mostLearned) continue;
    learned++;
    const again = learnedWithout(p, out, nominalRadius);
    if (again === null) break;
    now = again;
    own = ownInformation(now);
  }
  const found = onlyFar(now, out);
  // What was learned without readings that then agreed counts only where others did not agree.
  return { found, smoothness: found.length > 0 ? now.smoothness : p.smoothness };
}

/** All readings, by what is learned from those that are not left out. */
function learnedWithout(
  p: Posterior,
  out: readonly number[],
  nominalRadius: number,
): Posterior | null {
  const gone = new Set(out);
  const { sightings, setups, length, wornSide } = p.design;
  const rest = design(
    sightings.filter((_, i) => !gone.has(i)),
    setups,
    length,
    wornSide,
  );
  const learned = learnForJudging(rest, nominalRadius, p.smoothness.given);
  return condition(p.design, learned, nominalRadius);
}

const off = ({ residual, sd }: StandOff) => Math.abs(residual) / sd;

function farthest(all: readonly StandOff[]): StandOff | undefined {
  return all.reduce<StandOff | undefined>(
    (worst, one) => (worst === undefined || off(one) > off(worst) ? one : worst),
    undefined,
  );
}

/** Takes those back in, nearest first, that agree with the rest after all. */
function onlyFar(p: Posterior, out: readonly number[]): StandOff[] {
  let left = [...out];
  while (left.length > 0) {
    const judged = leftOutStandOffs(p, left).sort((a, b) => off(b) - off(a));
    const nearest = judged.at(-1);
    if (nearest === undefined) return [];
    if (off(nearest) > SUSPECT) return judged;
    left = left.filter((i) => i !== nearest.at);
  }
  return [];
}
