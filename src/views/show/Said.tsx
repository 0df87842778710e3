/** A sentence of the story: neither a pair of clock positions nor a figure and its unit is parted by a line's end. */
import { Words } from '../parts/Words.tsx';

const UNIT = /(\d) (in|mm|g|%)(?![\w-])/g;

export function Said({ text }: { readonly text: string }) {
  return <Words text={text.replace(UNIT, '$1\u00a0$2')} />;
}
