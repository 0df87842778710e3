/** A shop document's text as a shop, or one sentence about why it is none. */
import * as v from 'valibot';
import { gaugeDoubts } from './doubts.ts';
import { readJson } from './readJson.ts';
import { schemaFault } from './schemaFault.ts';
import { SHOP_FORMAT, SHOP_VERSION, Shop } from './shop.ts';
import { quoted } from './words.ts';

const SHOP_FILE = {
  one: 'shop document',
  wanted: 'a shop document',
  file: `JSON that begins with “format” ${quoted(SHOP_FORMAT)}`,
};

export type OpenedShop =
  | { readonly ok: true; readonly shop: Shop }
  | { readonly ok: false; readonly why: string };

/**
 * @param text what the file holds
 * @param fileName how the sentence is to name it
 */
export function openShop(text: string, fileName: string): OpenedShop {
  const fault = (why: string): OpenedShop => ({ ok: false, why: `${fileName}: ${why}.` });
  const read = readJson(text, SHOP_FILE);
  if ('why' in read) return fault(read.why);
  const head = headFault(read.data);
  if (head !== null) return fault(head);
  const parsed = v.safeParse(Shop, read.data, { abortEarly: true });
  if (!parsed.success) return fault(schemaFault(read.data, parsed.issues[0], 'the shop document'));
  const doubts: string[] = [];
  parsed.output.gauges?.forEach((gauge, index) => {
    gaugeDoubts(gauge, index, (doubt) => doubts.push(doubt));
  });
  const [doubt] = doubts;
  return doubt === undefined ? { ok: true, shop: parsed.output } : fault(doubt);
}

function headFault(data: unknown): string | null {
  const { format, version } = Object(data) as Record<string, unknown>;
  if (format !== SHOP_FORMAT) {
    const found =
      typeof format === 'string' ? `its “format” is ${quoted(format)}` : 'it says no “format”';
    return `this is no shop document: ${found}; ${SHOP_FILE.file} is wanted`;
  }
  if (typeof version === 'number' && version > SHOP_VERSION) {
    return `the shop document is of a newer Roundhand (version ${version} of its format); this one reads version ${SHOP_VERSION}`;
  }
  return null;
}

/** The document as it is kept and saved: format and version first. */
export function saveShop(shop: Shop): string {
  const { format, version, ...rest } = shop;
  return `${JSON.stringify({ format, version, ...rest }, null, 2)}\n`;
}
