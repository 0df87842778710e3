/** The contact pressure on map and drawing in words: the key, the place pointed at, and the whole for whoever cannot see it. */

import type { Seated } from '../evaluate/fit/seated.ts';
import type { FitAnswer } from '../evaluate/fit.ts';
import type { Units } from '../job/schema.ts';
import { pressureText, pressureUnit } from './loads.ts';
import { knownPress, type PressedWall } from './pressedWall.ts';
import { roundWords, touchWords } from './roundWords.ts';
import { linearAt } from './sample.ts';
import { written } from './written.ts';

/** What the lines mean, in few words. */
export interface PressKey {
  /** Figures of the lines with their unit; null: there are none. */
  readonly lines: string | null;
  /** Where there are no lines, since it presses as hard everywhere; else null. */
  readonly even: string | null;
  /** Per side; null: it touches everywhere. */
  readonly gaps: string | null;
  /** Null: as hard everywhere, or nowhere touching. */
  readonly hardest: string | null;
}

export function pressKey({ units, levels, greatest, parts }: PressedWall): PressKey {
  const widest = Math.max(...parts.map((part) => part.widest?.value ?? 0));
  const steps = levels.map(({ text }) => text).join(' · ');
  const most = greatest > 0 ? pressureText(greatest, units) : null;
  const stepped = levels.length > 0;
  return {
    lines: stepped ? `${steps} ${pressureUnit(units)}` : null,
    even: stepped ? null : most,
    hardest: stepped ? most : null,
    gaps: widest > 0 ? written(units, Number.NaN).perSide(widest) : null,
  };
}

const WALLS: Readonly<Record<Seated['wall']['kind'], string>> = {
  planned: 'in the bore as the plan is to leave it',
  measured: 'in the bore as it is measured here',
};

/** Each sentence ends in a full stop. */
export function pressedWords(
  answer: Pick<FitAnswer, 'bushings'>,
  { units, levels, greatest, parts }: PressedWall,
): string[] {
  const kind = answer.bushings[0]?.seated.wall.kind ?? 'planned';
  const several = answer.bushings.length > 1;
  const lines =
    levels.length > 0
      ? `Lines at ${levels.map(({ text }) => text).join(', ')} ${pressureUnit(units)}, the thicker the harder.`
      : greatest > 0
        ? 'No lines, since it presses as hard everywhere.'
        : 'No lines, since it touches nowhere.';
  return [
    `Where the bushing presses, ${WALLS[kind]}.`,
    ...answer.bushings.flatMap(({ seated, round }) => {
      const said = round.fit === null ? roundWords(round, units) : touchWords(round.fit, units);
      return several ? [`${seated.name}: ${said.join(' ')}`] : said;
    }),
    lines,
    ...(parts.some(({ widest }) => widest !== null)
      ? ['Ruled along the depth where it does not touch.']
      : []),
  ];
}

/**
 * `pressed with 38 MPa`, `no contact, a gap of 0.06 mm per side`; null where no bushing is to be held. The edge between pressing and gaping is that of the
 * lines (`pressLines.ts`).
 */
export function pressedHere(
  answer: Pick<FitAnswer, 'bushings'>,
  { theta, z }: { readonly theta: number; readonly z: number },
  units: Units,
): string | null {
  for (const [{ wall }, { pressure, gap, greatest, widest }] of knownPress(answer)) {
    const [p, open] = [linearAt(wall.grid, pressure, theta, z), linearAt(wall.grid, gap, theta, z)];
    if (Number.isNaN(p)) continue;
    const gapes = p === 0 || open * greatest.value > p * widest.value;
    if (!gapes) return `pressed with ${pressureText(p, units)}`;
    const { bare, perSide } = written(units, Number.NaN);
    return `no contact${Number(bare(open)) > 0 ? `, a gap of ${perSide(open)}` : ''}`;
  }
  return null;
}
