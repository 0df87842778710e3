/** Grinding tools: what they are called, whether they bridge a hollow, and their usual figures, in millimetres. */
import type { Decisions, ToolKind, Typed, Units } from './schema.ts';
import type { Shop } from './shop.ts';
import { NO_SHOP } from './shopGauges.ts';
import { figureUnit, lengthMm, MM_PER_INCH } from './units.ts';

interface KindOfTool {
  readonly name: string;
  /** Bridges hollows instead of following the wall. */
  readonly rigid: boolean;
  /** The most that one pass takes, per side: thou in an inch job, mm otherwise. Judgement. */
  readonly bite: readonly [thou: string, mm: string];
}

/** Bites are judgement, from what the trade uses each tool for: starting values, always editable. */
export const TOOL_KINDS: Readonly<Record<ToolKind, KindOfTool>> = {
  drum: { name: 'sanding drum', rigid: true, bite: ['3', '0.08'] },
  stone: { name: 'mounted stone', rigid: true, bite: ['3', '0.08'] },
  burr: { name: 'carbide burr', rigid: true, bite: ['10', '0.25'] },
  file: { name: 'half-round file', rigid: true, bite: ['2', '0.05'] },
  'flap-wheel': { name: 'flap wheel', rigid: false, bite: ['2', '0.05'] },
  strip: { name: 'abrasive strip', rigid: false, bite: ['1', '0.025'] },
  scraper: { name: 'scraper', rigid: false, bite: ['0.2', '0.005'] },
};

/** A figure of the tool, and the text that says it: typed, the shop's, or the usual one. */
export interface ToolFigure {
  readonly mm: number;
  readonly typed: Typed;
  readonly from: 'typed' | 'shop' | 'default';
}

export interface ToolFacts {
  readonly kind: ToolKind;
  readonly name: string;
  readonly rigid: boolean;
  readonly diameter: ToolFigure;
  readonly width: ToolFigure;
  readonly bite: ToolFigure;
  /** `mm` is mm a mm along the wall. */
  readonly slope: ToolFigure;
  /** What this hand takes off with it in one pass where most is asked, per side, mm, and from how many passes; null: not known. */
  readonly rate: { readonly perPass: number; readonly passes: number } | null;
}

/** What runs out steeper leaves an edge to be felt: judgement, 20 thou an inch is 1 in 50. */
function usualSlope(units: Units): Typed {
  return units === 'in' ? { text: '20', unit: 'thou' } : { text: '0.02', unit: 'mm' };
}

/** Two thirds of the bore, on the eighth of an inch or the 5 mm below: small enough to be led, large enough to bridge. */
function usualDiameter(bore: number, units: Units): Typed {
  const step = units === 'in' ? MM_PER_INCH / 8 : 5;
  const steps = Math.max(1, Math.floor((2 * bore) / 3 / step));
  return units === 'in'
    ? { text: String(steps / 8), unit: 'in' }
    : { text: String(steps * 5), unit: 'mm' };
}

/**
 * @param bore diameter of the target, mm
 * @returns the tool that is chosen, or a sanding drum, each figure as stated or else the usual one
 */
export function toolFacts(
  { tool: id, grinding = {} }: Decisions,
  shop: Shop | null,
  bore: number,
  units: Units,
): ToolFacts {
  const own = shop?.tools.find((one) => one.id === id);
  const kind = grinding.kind ?? own?.kind ?? 'drum';
  // Another kind than the shop's is another tool.
  const had = own?.kind === kind ? own : undefined;
  const { name, rigid, bite } = TOOL_KINDS[kind];
  const [thou, mm] = bite;
  const twice = (typed: Typed | undefined) =>
    typed === undefined
      ? undefined
      : { text: String(+(2 * lengthMm(typed)).toFixed(4)), unit: 'mm' as const };
  return {
    kind,
    name: had?.name ?? name,
    rigid,
    diameter: figure(grinding.diameter, twice(had?.radius), usualDiameter(bore, units)),
    width: figure(
      grinding.width,
      had?.width,
      units === 'in' ? { text: '1', unit: 'in' } : { text: '25', unit: 'mm' },
    ),
    bite: figure(
      grinding.bite,
      had?.bite,
      units === 'in' ? { text: thou, unit: 'thou' } : { text: mm, unit: 'mm' },
    ),
    slope: figure(grinding.slope, undefined, usualSlope(units), slopeOf),
    rate: rateOf(shop, had?.id ?? kind),
  };
}

/** What is typed, else the shop's, else the usual; a text that is no length above 0 counts as not typed. */
function figure(
  typed: Typed | undefined,
  shops: Typed | undefined,
  usual: Typed,
  read: (typed: Typed) => number = lengthMm,
): ToolFigure {
  if (typed !== undefined && read(typed) > 0) return { mm: read(typed), typed, from: 'typed' };
  if (shops !== undefined && read(shops) > 0)
    return { mm: read(shops), typed: shops, from: 'shop' };
  return { mm: read(usual), typed: usual, from: 'default' };
}

/** mm a mm: a text in millimetres is that, any other a length an inch. */
function slopeOf(typed: Typed): number {
  return figureUnit(typed) === 'mm' ? lengthMm(typed) : lengthMm(typed) / MM_PER_INCH;
}

function rateOf(shop: Shop | null, tool: string): ToolFacts['rate'] {
  const found = shop?.rates.find((one) => one.tool === tool);
  if (found === undefined || !(lengthMm(found.perPass) > 0)) return null;
  return { perPass: lengthMm(found.perPass), passes: found.passes };
}

/**
 * The shop with one pass more counted into the rate of a tool: the mean of all. Where the shop does not hold the tool, its
 * kind stands for it.
 *
 * @param perPass per side, mm, where most was asked
 */
export function withRate(
  shop: Shop | null,
  { tool: id, grinding }: Decisions,
  perPass: number,
): Shop {
  const old = shop ?? NO_SHOP;
  const kind = grinding?.kind ?? old.tools.find((one) => one.id === id)?.kind ?? 'drum';
  const own = old.tools.find((one) => one.id === id && one.kind === kind);
  const tool = own?.id ?? kind;
  const before = rateOf(old, tool) ?? { perPass: 0, passes: 0 };
  const passes = before.passes + 1;
  const mean = before.perPass + (perPass - before.perPass) / passes;
  const rate = { tool, perPass: { text: mean.toFixed(4), unit: 'mm' as const }, passes };
  return { ...old, rates: [...old.rates.filter((one) => one.tool !== tool), rate] };
}
