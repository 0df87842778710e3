/** What each rule for the centre costs, as a table and in sentences. */
import type { CentreRule } from '../bore/types.ts';
import type { CentreCost } from '../evaluate/centreCost.ts';
import type { Centres } from '../evaluate/centres.ts';
import type { Units } from '../job/schema.ts';
import { formatAcross, formatDepth, formatPerSide } from '../job/units.ts';
import { earned, massDecimals, volumeDecimals as volumeDecimalsOf } from './amountWords.ts';
import { nearClock } from './nearClock.ts';
import { percentText } from './tradeOffWords.ts';
import { written } from './written.ts';

interface RuleName {
  readonly name: string;
  readonly what: string;
}

export const CENTRE_RULES: Readonly<Record<CentreRule, RuleName>> = {
  keep: {
    name: 'Keep the old centre',
    what: 'from the unworn metal; wear on one side then costs twice its depth across',
  },
  free: { name: 'Least metal off', what: 'it moves to where least is ground in all' },
  'least-cut': {
    name: 'Least greatest cut',
    what: 'it moves to where the deepest place is shallowest',
  },
  partner: {
    name: 'Line up with the partner',
    what: 'on the line of the bores that share the pin',
  },
  'by-hand': { name: 'By hand', what: 'where you put it' },
};

/** One line of the table; all cells as text. */
export interface CentreRow {
  readonly rule: CentreRule;
  /** `1.1 g`. */
  readonly off: string;
  /** `0.0035`, per side in the job's units. */
  readonly cut: string;
  /** `140 mm³`. */
  readonly volume: string;
  /** `62 %`. */
  readonly held: string;
  /** `0.82`, thou per inch or mm per 100 mm, against the partner's line or the readings' axis; `none`. */
  readonly lean: string;
  /** `40 % of the limit`, of the lean that the partner allows; '' where none is known. */
  readonly ofLimit: string;
  /** `off the line by 96 % of the limit`, half-way in, of what the running clearance allows; '' where none is known. */
  readonly ofAside: string;
  /** `0.0020 to 6:00`, per side in the job's units. */
  readonly moves: string;
}

type CentreColumn = 'off' | 'cut' | 'held' | 'lean' | 'moves';

/** What the columns of the table are, in their order. */
export function centreHeads(units: Units): { column: CentreColumn; text: string }[] {
  return [
    { column: 'off', text: 'metal off' },
    { column: 'cut', text: `greatest cut, ${units} per side` },
    { column: 'held', text: 'seat held' },
    { column: 'lean', text: `lean, ${LEAN_UNIT[units]}` },
    { column: 'moves', text: `moves by, ${units}` },
  ];
}

/** Of one bore, the rules differ by less than any of them is known: all rows have the digits of the one known best. */
export function centreRows({ costs, limit }: Centres, units: Units): CentreRow[] {
  const give = Math.min(...costs.map(({ cut }) => cut.give));
  const { bare } = written(units, give);
  const decimals = Math.max(...costs.map(({ amounts }) => massDecimals(amounts)));
  const volumeDecimals = Math.max(...costs.map(({ amounts }) => volumeDecimalsOf(amounts)));
  return costs.map(({ rule, amounts, cut, lean, aside, moved, seating }) => {
    const by = bare(moved.by);
    return {
      rule,
      off: `${earned(amounts.mass, decimals)} g`,
      volume: `${earned(amounts.volume, volumeDecimals)} mm³`,
      cut: bare(cut.depth),
      held: percentText(seating.hand ?? seating.suit),
      lean: Number(leanFigure(lean, units)) > 0 ? leanFigure(lean, units) : 'none',
      ofLimit: limit === null ? '' : `${percentOf(lean, limit.lean)} of the limit`,
      ofAside:
        limit === null ? '' : `off the line by ${percentOf(aside, limit.aside)} of the limit`,
      moves: Number(by) > 0 ? `${by} to ${nearClock(moved.theta)}` : 'stays',
    };
  });
}

function percentOf(part: number, whole: number): string {
  const share = 100 * (part / whole);
  return part > 0 && share < 0.5 ? 'under 1 %' : `${Math.round(part > 0 ? share : 0)} %`;
}

/** One rule as it is offered: with its line of the table, or with what keeps it from being used. */
export interface CentreOffer extends RuleName {
  readonly rule: CentreRule;
  readonly row: CentreRow | null;
  /** What is missing and what would give it; '' where the rule can be used. */
  readonly missing: string;
}

/** Every rule. @param centres null: not worked out yet, so that no line is there and nothing is known to be missing */
export function centreOffers(centres: Centres | null, units: Units): CentreOffer[] {
  const rows = centres === null ? [] : centreRows(centres, units);
  return (Object.keys(CENTRE_RULES) as CentreRule[]).map((rule) => {
    const missing = centres === null ? '' : missingFor(rule, centres);
    const row = rows.find((one) => one.rule === rule) ?? null;
    return { rule, ...CENTRE_RULES[rule], row, missing };
  });
}

function missingFor(rule: CentreRule, { costs, partner }: Centres): string {
  if (rule === 'partner') return partner.status === 'unknown' ? partner.why : '';
  if (rule !== 'by-hand' || costs.some((one) => one.rule === rule)) return '';
  return 'Not set yet: choose it, and it begins where the centre stands now.';
}

/** The chosen rule in sentences: its deepest cut, its worst gap, and how it stands to the partner. */
export function sayCentre(
  cost: CentreCost,
  centres: Centres,
  units: Units,
): [own: string, against: string] {
  const { cut, seating } = cost;
  const { perSide } = written(units, cut.give);
  const place = (theta: number, z: number) => `${nearClock(theta)}, ${formatDepth(z, units)} deep`;
  const deepest =
    cut.depth > 0
      ? `The deepest cut is ${perSide(cut.depth)} at ${place(cut.theta, cut.z)}, give or take ${written(units, cut.give).bare(cut.give)}`
      : 'Nothing of the seat stands inside the target';
  const { over, theta, z, give } = seating.gap;
  const gap =
    over > 0
      ? `the worst gap ${written(units, give).perSide(over)} at ${place(theta, z)}`
      : 'no place of the seat lies over the target';
  return [`${deepest}; ${gap}.`, sayPartner(cost, centres, units)];
}

/** How far a centre stands off the partner's line, and how far it may. */
function sayPartner(cost: CentreCost, { partner, limit }: Centres, units: Units): string {
  if (partner.status === 'unknown') {
    return `${partner.why} Without it nobody can say how far the centre may move or lean.`;
  }
  const { perSide } = written(units, cost.cut.give);
  const others = partner.with.map((name) => `“${name}”`).join(' and ');
  const stands =
    `Half-way in it stands ${perSide(cost.aside)} off the line of ${others}, ` +
    `and leans ${leanText(cost.lean, units)} against it`;
  if (limit === null) {
    return `${stands}. The running clearance is not known: give the pin’s size or the clearance, and how far it may stand off follows.`;
  }
  const over = cost.aside > limit.aside || cost.lean > limit.lean;
  const usual = limit.from === 'typed' ? '' : ', the usual one,';
  return (
    `${stands}. Half of the running clearance of ${formatAcross(limit.clearance, units)}${usual} is ` +
    `${formatPerSide(limit.aside, units)}, a lean of ${leanText(limit.lean, units)} over the ` +
    `${formatDepth(partner.distance, units)} between them: ` +
    (over
      ? 'that is more than the pin allows (common practice).'
      : 'the pin allows that (common practice).')
  );
}

/** Sideways for so much depth. */
const LEAN_UNIT: Readonly<Record<Units, string>> = { in: 'thou per inch', mm: 'mm per 100 mm' };

/** `0.82 thou per inch`, `0.082 mm per 100 mm`. */
function leanText(lean: number, units: Units): string {
  return `${leanFigure(lean, units)} ${LEAN_UNIT[units]}`;
}

function leanFigure(lean: number, units: Units): string {
  return units === 'mm' ? (100 * lean).toFixed(3) : (1000 * lean).toFixed(2);
}
