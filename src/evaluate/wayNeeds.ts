/** What each way of mending needs, and whether the shop has it. */
import { WAY_NAMES, type WayName, type WayOutcome } from '../bore/wayTypes.ts';
import type { Machine, Shop } from '../job/shop.ts';

export type Tool = 'cutter' | 'strip' | 'shim' | Machine;

export interface Need {
  readonly tool: Tool;
  /** Not said: the shop document tells nothing of it. */
  readonly have: 'yes' | 'no' | 'not-said';
}

type Kind = Shop['tools'][number]['kind'];

/** Tools that take down what stands highest, and do not follow the hole. */
const CUTTERS: readonly Kind[] = ['drum', 'stone', 'burr', 'file', 'scraper'];

export function needsOf(
  outcomes: readonly WayOutcome[],
  shop: Shop | null,
): Readonly<Record<WayName, readonly Need[]>> {
  const needs = WAY_NAMES.map((name): [WayName, readonly Need[]] => {
    const one = outcomes.find((outcome) => outcome.name === name);
    return [name, one === undefined ? [] : toolsFor(one).map((tool) => need(tool, shop))];
  });
  return Object.fromEntries(needs) as Record<WayName, readonly Need[]>;
}

function toolsFor({ name, off, passes, squeeze, on, waits }: WayOutcome): Tool[] {
  const most = Math.max(passes, squeeze?.drawnIn.passes ?? 0);
  const grinding: Tool[] =
    !(off.volume > 0) || (most === 0 && waits === null)
      ? []
      : Number.isNaN(most)
        ? ['boring-bar']
        : ['cutter', 'strip'];
  switch (name) {
    case 'squeeze':
      return squeeze !== null && squeeze.closing > 0 ? ['torch', ...grinding] : grinding;
    case 'weld':
      return on.volume > 0 ? ['welder', ...grinding] : grinding;
    case 'shim':
      return ['shim', ...grinding];
    case 'oversize':
      return ['lathe', ...grinding];
    case 'sleeve':
      return ['boring-bar', 'lathe'];
    default:
      return grinding;
  }
}

function need(tool: Tool, shop: Shop | null): Need {
  return { tool, have: have(tool, shop) };
}

function have(tool: Tool, shop: Shop | null): Need['have'] {
  if (shop === null) return 'not-said';
  const { tools, stock, machines } = shop;
  if (tool === 'cutter' || tool === 'strip') {
    if (tools.length === 0) return 'not-said';
    const wanted = tool === 'cutter' ? CUTTERS : (['strip'] as const);
    return tools.some(({ kind }) => (wanted as readonly Kind[]).includes(kind)) ? 'yes' : 'no';
  }
  // The layers are chosen from the stock where there is any.
  if (tool === 'shim') return stock.length > 0 ? 'yes' : 'not-said';
  if (machines === undefined) return 'not-said';
  return machines.includes(tool) ? 'yes' : 'no';
}
