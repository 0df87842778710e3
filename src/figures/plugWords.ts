/** What enters the bore and what cleans it up, over the measured depth. */
import type { Plugs } from '../bore/types.ts';
import type { Units } from '../job/schema.ts';
import { type Sentence, said } from './sentence.ts';
import { written } from './written.ts';

/** @param give two standard deviations of a mean diameter, across, mm */
export function plugSentences({ bore }: Plugs, give: number, units: Units): Sentence[] {
  if (bore?.average == null || bore.around === null) return [];
  const { plain } = written(units, give);
  const average = `the average round is ${plain(bore.average.diameter)}`;
  const around = `a straight cut that cleans up everything ends at ${plain(bore.around.diameter)}`;
  if (bore.entering === null) {
    return [
      said(
        'Over the measured depth ',
        '',
        `${average}, and ${around}, all across, give or take ${plain(give)}.`,
      ),
    ];
  }
  return [
    said(
      'The biggest plug that would enter over the measured depth is ',
      plain(bore.entering.diameter),
      ` across; ${average}, and ${around}, both across; each give or take ${plain(give)}.`,
    ),
  ];
}
