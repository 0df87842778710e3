/** Text of which no pair of clock positions (`3–9`, `1:30–7:30`) is broken at the end of a line. */
const PAIR = /(\d{1,2}(?::\d\d)?–\d{1,2}(?::\d\d)?)/;

export function Words({ text }: { readonly text: string }) {
  // Every second part is a pair: the pattern has one group.
  return text.split(PAIR).map((part, at) =>
    at % 2 === 1 ? (
      <span key={at} className="unbroken">
        {part}
      </span>
    ) : (
      part
    ),
  );
}
