/** Plain text laid out for people: paragraphs, lists and tables of a report. */
const WIDTH = 96;

export function underlined(name: string): string {
  return `${name}\n${'-'.repeat([...name].length)}`;
}

/** Cells under one another, to the right but for those that are words. */
export function columns(
  rows: readonly (readonly string[])[],
  words: (at: number) => boolean,
): string {
  const widths = rows[0]!.map((_, i) => Math.max(...rows.map((row) => [...row[i]!].length)));
  return rows
    .map((row) =>
      row
        .map((cell, i) => {
          const gap = ' '.repeat(widths[i]! - [...cell].length);
          return words(i) ? cell + gap : gap + cell;
        })
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

export function paragraphs(sentences: readonly string[]): string {
  return sentences.map((text) => wrapped(text)).join('\n');
}

export function list(texts: readonly string[]): string {
  return texts.map((text) => wrapped(text, '- ', '  ')).join('\n');
}

/** Broken between words; `first` before the first line and `rest` before the others. */
export function wrapped(text: string, first = '', rest = ''): string {
  const lines: string[] = [];
  let line = first;
  for (const word of text.split(' ')) {
    const longer = line === first || line === rest ? line + word : `${line} ${word}`;
    if (longer.length > WIDTH && line.trim() !== '' && line !== first && line !== rest) {
      lines.push(line);
      line = rest + word;
    } else line = longer;
  }
  lines.push(line);
  return lines.join('\n');
}
