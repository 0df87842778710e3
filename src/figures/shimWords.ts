/** Shims in words: what the bore is ground to, which sheets fill it, how each strip is cut, and what shims are worth. */
import type { BuildUp } from '../evaluate/buildUp.ts';
import { clockText } from '../job/clock.ts';
import type { Units } from '../job/schema.ts';
import { formatAcross, formatDepth, formatLength, formatPerSide } from '../job/units.ts';

export type Shims = NonNullable<BuildUp['shims']>;

export interface ShimWords {
  readonly stack: readonly string[];
  readonly strips: readonly StripWords[];
  readonly rules: readonly string[];
  readonly cautions: readonly string[];
  /** Null where no part-round shim comes into question. */
  readonly partRound: { readonly says: string; readonly hours: readonly PartHour[] } | null;
}

export interface StripWords {
  readonly layer: string;
  readonly thickness: string;
  readonly length: string;
  readonly butt: string;
  /** `at 3.21 in, 0.26 x 0.26 in`; `none`. */
  readonly hole: string;
}

export interface PartHour {
  readonly clock: string;
  readonly thickness: string;
}

export const NO_SHIMS = 'No place of the seat is over the target: there is nothing to shim.';

/** Thinner than this a single all-round shim is not sound. Judgement. */
const SOUND = 0.254;

/** Two sizes that differ by less are written alike, mm across. */
const UNLIKE = 0.00127;

export function shimWords(shims: Shims, { facts }: BuildUp, units: Units): ShimWords {
  const { stack, seats } = shims;
  const { tab, gap, clear } = facts.shim;
  const length = (mm: number) => formatLength(mm, units, units === 'in' ? 3 : 1);
  return {
    stack: stackWords(shims, facts, units),
    strips: shims.strips.map(({ thickness, length: cut, butt, holes }, k) => ({
      layer: k === 0 ? 'against the wall' : k === 1 ? 'on that' : `layer ${k + 1}`,
      thickness: formatLength(thickness, units),
      length: length(cut),
      butt: clockText(butt),
      hole:
        holes
          .map(
            ({ at, from, to, along }) =>
              `${length(at)} from the first end, ${formatDepth((from + to) / 2, units)} deep, ${length(along)} by ${length(to - from)}`,
          )
          .join('; ') || 'none',
    })),
    rules:
      stack === null ? [] : ruleWords({ seats, tab: tab.mm, gap: gap.mm, clear, length }, units),
    cautions: cautionsOf(shims),
    partRound: partWords(shims, units),
  };
}

function stackWords(shims: Shims, facts: BuildUp['facts'], units: Units): string[] {
  const { cleanUp, round, stated, missing, stack, pressFit, massOff, passesTo } = shims;
  const from = facts.stock.from === 'shop' ? 'the stock of this shop' : 'the usual sheets';
  const size = stated ? 'Ground round at' : 'Grind it round at';
  const clean = `every place of the seat, to its ends, cleans up at ${formatAcross(cleanUp, units)}`;
  const off = `${massOff.toFixed(1)} g comes off for that`;
  if (stack === null) {
    return [
      `${size} ${formatAcross(round, units)} (${clean}), ${formatPerSide(missing, units)} is missing. No stack of up to four layers of ${from} makes that up: fit a sleeve or an oversize bushing.`,
    ];
  }
  const layers = stack.layers.map((t) => formatLength(t, units)).join(', then ');
  const miss = Math.abs(stack.over);
  const told =
    stated && miss > 1e-6
      ? ` That is ${formatPerSide(miss, units)} too ${stack.over > 0 ? 'thick' : 'thin'}.`
      : '';
  const count = stack.layers.length === 1 ? 'one layer' : `${stack.layers.length} layers`;
  const says = [
    `${size} ${formatAcross(round, units)} (${clean}); ${off}. Then ${formatPerSide(stated ? missing : stack.thickness, units)} is missing: ${count} of ${from}, ${layers}.${told}`,
  ];
  if (Math.abs(passesTo - round) > UNLIKE) {
    says.push(
      `The passes of this plan go to ${formatAcross(passesTo, units)}, not to that round: make it the target before the bore is ground for shims.`,
    );
  }
  if (Number.isFinite(pressFit)) {
    says.push(
      pressFit > 0
        ? `Lined, it holds the bushing at hand with a press fit of ${formatAcross(pressFit, units)}.`
        : `Lined, the bushing at hand would be loose in it by ${formatAcross(-pressFit, units)}: take the next thicker stack.`,
    );
  }
  return says;
}

interface Cutting {
  readonly seats: Shims['seats'];
  readonly tab: number;
  readonly gap: number;
  readonly clear: number;
  length(mm: number): string;
}

function ruleWords({ seats, tab, gap, clear, length }: Cutting, units: Units): string[] {
  const widths = seats.map(({ from, to }) => formatDepth(to - from, units));
  const says = [
    `Each strip is ${widths.join(' and ')} wide, as the seat is long. Its ends butt and never lap; ${length(gap)} stays open between them. The thickest lies against the wall, the thinnest under the bushing.`,
    `The first end lies at the clock position told, seen from face A, and the strip runs clockwise from there: away from the load, and no two joints over each other. A hole is cut ${length(clear)} larger all round than the grease hole.`,
  ];
  if (tab > 0) {
    says.push(
      `Leave tabs ${length(tab)} long at the mouth, bent out over the rim, so that the bushing cannot drag the strips in; trim them when it is home.`,
    );
  }
  return says;
}

function cautionsOf({ stack }: Shims): string[] {
  const says = [
    'Cut sheet is a blade: gloves, and edges stoned before it goes in. Break the edges of bore and hole, or they cut the strip.',
    'Shims carry a steady load; where the joint hammers they walk. Look that no strip closes the grease hole when the bushing is home.',
  ];
  if (stack?.layers.some((t) => t < SOUND - 1e-9) === true) {
    says.push(
      'A layer thinner than 0.010 in (0.25 mm) wrinkles easily and is good for a trial or a light load: a sleeve lasts longer.',
    );
  }
  return says;
}

function partWords({ partRound }: Shims, units: Units): ShimWords['partRound'] {
  if (partRound === null) return null;
  const clock = (hour: number) => (hour === 0 ? '12' : String(hour));
  return {
    says: `A shim on the worn side alone is second best, and only tapered to nothing at both ends, matched to the map and fixed with compound or a tack: ${formatPerSide(partRound.thickest, units)} at ${clock(partRound.at)} o’clock, the mean along the depth. One strip of even thickness leaves two steps, and works loose.`,
    hours: partRound.hours.map((t, hour) => ({
      clock: clock(hour),
      thickness: t > 0 ? formatLength(t, units) : '–',
    })),
  };
}
