/** The trade-off chart as data: metal off, seat held and worst gap over the target's diameter, in the job's units. */
import type { TradeOff } from '../evaluate/tradeOff.ts';
import { decimalsFor, decimalsOf } from '../job/digits.ts';
import type { Units } from '../job/schema.ts';
import { inUnits } from '../job/units.ts';
import { earned } from './amountWords.ts';

export type PanelKind = 'off' | 'held' | 'gap';

export interface Curve {
  /** `hand`: the bushing at hand; `suit`: one made to suit the target; `only`: of neither. */
  readonly of: 'hand' | 'suit' | 'only';
  /** One value a diameter of the figure; NaN not known. */
  readonly values: readonly number[];
}

export interface Panel {
  readonly kind: PanelKind;
  readonly title: string;
  readonly curves: readonly Curve[];
  /** Give-or-take of the first curve, one pair a diameter. */
  readonly band: readonly (readonly [least: number, most: number])[];
  /** Top of the scale; its foot is 0. */
  readonly top: number;
}

export interface TradeOffFigure {
  readonly units: Units;
  readonly least: number;
  readonly greatest: number;
  /** What the target moves by. */
  readonly step: number;
  readonly diameters: readonly number[];
  readonly panels: readonly Panel[];
  readonly marks: readonly { readonly at: number; readonly name: string; readonly own: boolean }[];
}

type MarkKind = TradeOff['marks'][number]['kind'];

/** `own`: a size of the bore as it is, not of what goes into it. */
const MARKS: Readonly<Record<MarkKind, { readonly name: string; readonly own: boolean }>> = {
  plug: { name: 'biggest plug', own: true },
  average: { name: 'average round', own: true },
  'clean-up': { name: 'smallest clean-up', own: true },
  usual: { name: 'bushing less press fit', own: false },
  bushing: { name: 'bushing', own: false },
};

export function tradeOffFigure({ range, points, marks }: TradeOff, units: Units): TradeOffFigure {
  const shown = (mm: number) => inUnits(mm, units);
  const hand = points.some((point) => point.hand !== null);
  const percent = (share: number) => 100 * share;
  const held = (of: 'hand' | 'suit'): Curve => ({
    of,
    values: points.map((point) => percent(point[of]?.likely ?? Number.NaN)),
  });
  const main = hand ? 'hand' : 'suit';
  return {
    units,
    least: shown(range.least),
    greatest: shown(range.greatest),
    step: shown(range.step),
    diameters: points.map(({ diameter }) => shown(diameter)),
    panels: [
      panel(
        'off',
        'metal off, g',
        [{ of: 'only', values: points.map(({ mass }) => mass) }],
        points.map(({ sureMass, possibleMass }) => [sureMass, possibleMass]),
      ),
      panel(
        'held',
        'seat held, %',
        hand ? [held('hand'), held('suit')] : [held('suit')],
        points.map((point) => [
          percent(point[main]?.least ?? Number.NaN),
          percent(point[main]?.most ?? Number.NaN),
        ]),
        100,
      ),
      panel(
        'gap',
        `worst gap, ${units} per side`,
        [{ of: 'only', values: points.map(({ gap }) => shown(gap.over)) }],
        points.map(({ gap }) => [
          Math.max(0, shown(gap.over - gap.give)),
          shown(gap.over + gap.give),
        ]),
      ),
    ],
    marks: marks.map(({ kind, diameter }) => ({ at: shown(diameter), ...MARKS[kind] })),
  };
}

function panel(
  kind: PanelKind,
  title: string,
  curves: readonly Curve[],
  band: Panel['band'],
  top?: number,
): Panel {
  const known = [...curves.flatMap(({ values }) => values), ...band.map(([, most]) => most)];
  const most = Math.max(0, ...known.filter(Number.isFinite));
  return { kind, title, curves, band, top: top ?? (most > 0 ? most : 1) };
}

/** A curve's value at a diameter, straight between the diameters of the figure; NaN outside them. */
export function valueAt(
  diameters: readonly number[],
  values: readonly number[],
  at: number,
): number {
  const last = diameters.length - 1;
  if (!(at >= diameters[0]! - 1e-9 && at <= diameters[last]! + 1e-9)) return Number.NaN;
  let k = 0;
  while (k < last - 1 && diameters[k + 1]! <= at) k++;
  const share = Math.min(1, (at - diameters[k]!) / (diameters[k + 1]! - diameters[k]!));
  return share <= 0 ? values[k]! : values[k]! + share * (values[k + 1]! - values[k]!);
}

/** What a panel's first curve says at a diameter, with the digits that it has earned; '' where nothing is known. */
export function textAt({ diameters, units }: TradeOffFigure, of: Panel, at: number): string {
  const value = valueAt(diameters, of.curves[0]!.values, at);
  if (Number.isNaN(value)) return '';
  const [least, most] = [0, 1].map((end) =>
    valueAt(
      diameters,
      of.band.map((pair) => pair[end as 0 | 1]),
      at,
    ),
  ) as [number, number];
  const give = (most - least) / 2;
  if (of.kind === 'held') return `${earned(value, Math.min(0, decimalsOf(give) ?? 0))} %`;
  if (of.kind === 'off') return `${earned(value, Math.min(2, decimalsOf(give) ?? 2))} g`;
  const mm = units === 'in' ? 25.4 : 1;
  return value.toFixed(decimalsFor(give * mm, units));
}

/** The chart as a few rows of a table, for whoever cannot see it: every mark, and sizes between. */
export function tableRows(
  figure: TradeOffFigure,
  count = 7,
): { readonly size: string; readonly name: string; readonly cells: readonly string[] }[] {
  const { least, greatest, step, units, marks, panels } = figure;
  const even = Array.from({ length: count }, (_, i) => {
    const at = least + ((greatest - least) * i) / (count - 1);
    return { at: least + Math.round((at - least) / step) * step, name: '' };
  });
  return [...marks, ...even]
    .sort((a, b) => a.at - b.at)
    .map(({ at, name }) => ({
      size: at.toFixed(units === 'in' ? 4 : 3),
      name,
      cells: panels.map((one) => textAt(figure, one, at)),
    }));
}

/** Names of the marks under the axis, in lanes so that none covers another; px. */
export function markLanes(
  figure: TradeOffFigure,
  xOf: (value: number) => number,
  [left, right]: readonly [number, number],
  letter: number,
): {
  readonly x: number;
  readonly middle: number;
  readonly lane: number;
  readonly name: string;
  readonly own: boolean;
}[] {
  const ends: number[] = [];
  return [...figure.marks]
    .sort((a, b) => a.at - b.at)
    .map(({ at, name, own }) => {
      const x = xOf(at);
      const half = (name.length * letter) / 2 + 4;
      const middle = Math.min(Math.max(x, left + half), right - half);
      let lane = 0;
      while ((ends[lane] ?? Number.NEGATIVE_INFINITY) > middle - half) lane++;
      ends[lane] = middle + half;
      return { x, middle, lane, name, own };
    });
}
