/** What the shop has to work with besides gauges: grinding tools, machines, sheet stock. */
import type { ToolKind } from './schema.ts';
import type { Machine, Shop } from './shop.ts';
import { NO_SHOP } from './shopGauges.ts';
import { TOOL_KINDS } from './tools.ts';
import { lengthMm } from './units.ts';

/** The shop with a kind of grinding tool at hand or not; one with figures of its own goes with its kind. */
export function withTool(shop: Shop | null, kind: ToolKind, at: boolean): Shop {
  const old = shop ?? NO_SHOP;
  const others = old.tools.filter((tool) => tool.kind !== kind);
  if (!at) return { ...old, tools: others };
  if (others.length < old.tools.length) return old;
  return { ...old, tools: [...old.tools, { id: kind, name: TOOL_KINDS[kind].name, kind }] };
}

/** The shop with a machine at hand or not; from the first that is said on, those not said are not there. */
export function withMachine(shop: Shop | null, machine: Machine, at: boolean): Shop {
  const old = shop ?? NO_SHOP;
  const others = (old.machines ?? []).filter((one) => one !== machine);
  return { ...old, machines: at ? [...others, machine] : others };
}

/**
 * The shop with these sheets and no others; those that it had keep their names.
 *
 * @param text thicknesses in a row, `0.005 0.010`; in millimetres a comma may stand for the point: `0,1; 0,2`
 * @returns why not, as a sentence's beginning
 */
export function withSheets(
  shop: Shop | null,
  text: string,
  unit: 'in' | 'mm',
): { readonly shop: Shop } | { readonly why: string } {
  const old = shop ?? NO_SHOP;
  const words = text.split(/[;\s]+|,(?=\s)/).filter((word) => word !== '' && word !== ',');
  const sheets = words.map((word) => ({ text: word, unit }));
  const wrong = sheets.find((typed) => !(lengthMm(typed) > 0));
  if (wrong !== undefined) {
    return { why: `“${wrong.text}” is no thickness: write them with a space between, as 0.2 0.5` };
  }
  const stock = sheets.map((thickness, i) => {
    const mm = lengthMm(thickness);
    const had = old.stock.find((one) => Math.abs(lengthMm(one.thickness) - mm) < 1e-9);
    return {
      id: `sheet${i + 1}`,
      name: had?.name ?? 'sheet',
      thickness: had?.thickness ?? thickness,
    };
  });
  return { shop: { ...old, stock } };
}
