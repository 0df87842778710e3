/**
 * Text of which no pair of clock positions (`3–9`, `1:30–7:30`) and no figure with its unit (`0.0002 in`) is broken at
 * the end of a line, and whose words of the trade can be asked about: the first of each in a section becomes a button, see `terms/marks.ts`.
 */
import { termParts } from '../../figures/termNames.ts';

const WHOLE = /(\d{1,2}(?::\d\d)?–\d{1,2}(?::\d\d)?|[±−+]?\d+\.\d+ (?:in|mm)\b)/;

export function Words({ text }: { readonly text: string }) {
  // Every second part is to stay whole: the pattern has one group.
  return text.split(WHOLE).map((part, at) =>
    at % 2 === 1 ? (
      <span key={at} className="unbroken">
        {part}
      </span>
    ) : (
      <Plain key={at} text={part} />
    ),
  );
}

function Plain({ text }: { readonly text: string }) {
  return termParts(text).map(({ text: part, term }, at) =>
    term === null ? (
      part
    ) : (
      <span key={at} data-term={term}>
        {part}
      </span>
    ),
  );
}
