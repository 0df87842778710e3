/** The text of a document that a person handed over, as JSON; or one sentence why it is none. */

/**
 * @param what the document that is wanted, in words
 * @returns the data, or why the text holds none, without a full stop
 */
export function readJson(
  text: string,
  what: { readonly one: string; readonly wanted: string; readonly file: string },
): { data: unknown } | { why: string } {
  const plain = text.replace(/^\uFEFF/, '').trim();
  if (plain === '') return { why: `the file is empty; ${what.wanted} is wanted` };
  try {
    return { data: JSON.parse(plain) };
  } catch (thrown) {
    if (plain.startsWith('{') && !plain.endsWith('}')) {
      return {
        why: `the file stops in the middle of a ${what.one}; it was cut off when it was copied`,
      };
    }
    const line = faultLine(thrown instanceof Error ? thrown.message : '', plain);
    const where = line === null ? '' : ` (line ${line} is not written as JSON)`;
    return { why: `this is no ${what.one}${where}; ${what.file} is wanted` };
  }
}

/** Engines say where by position or by line, or do not say. */
function faultLine(message: string, text: string): number | null {
  const line = /line (\d+)/.exec(message);
  if (line !== null) return Number(line[1]);
  const position = /position (\d+)/.exec(message);
  return position === null ? null : text.slice(0, Number(position[1])).split('\n').length;
}
