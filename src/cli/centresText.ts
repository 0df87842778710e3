/** What each rule for the centre costs, for people: one line a rule, and what the chosen one comes to. */
import type { Centres } from '../evaluate/centres.ts';
import { CENTRE_RULES, centreHeads, centreRows, sayCentre } from '../figures/centreWords.ts';
import type { Units } from '../job/schema.ts';
import { columns, paragraphs } from './textLayout.ts';

export function centresText(found: Centres | null, units: Units): string {
  if (found === null) return '';
  const rows = centreRows(found, units).map(({ rule, off, cut, held, lean, moves }) => {
    const chosen = rule === found.chosen ? ' (chosen)' : '';
    return [`${CENTRE_RULES[rule].name}${chosen}`, off, cut, held, lean, moves];
  });
  const head = ['', ...centreHeads(units).map(({ text }) => text)];
  const cost = found.costs.find(({ rule }) => rule === found.chosen);
  return [
    `What each centre costs:\n${columns([head, ...rows], (at) => at === 0)}`,
    ...(cost === undefined ? [] : [paragraphs(sayCentre(cost, found, units))]),
  ].join('\n');
}
