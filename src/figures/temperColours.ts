/**
 * The colours that clean, bright steel takes on in air, by temperature. Tables differ, and the spread is shown: a table of
 * 430 to 640 °F as handbooks print it, the average of five old sources, and a chart in °C from 210 to 330.
 */

export interface TemperColour {
  readonly name: string;
  /** °C between which tables put it. */
  readonly least: number;
  readonly most: number;
  /** Of the oxide itself, not of a theme. */
  readonly shade: string;
}

export const TEMPER_COLOURS: readonly TemperColour[] = [
  { name: 'pale straw', least: 210, most: 232, shade: '#e8d8a0' },
  { name: 'straw', least: 220, most: 238, shade: '#d9b35c' },
  { name: 'dark straw', least: 240, most: 249, shade: '#bd8a3c' },
  { name: 'brown', least: 250, most: 266, shade: '#8f5a34' },
  { name: 'purple', least: 270, most: 282, shade: '#7d4672' },
  { name: 'violet', least: 280, most: 288, shade: '#54448c' },
  { name: 'blue', least: 290, most: 310, shade: '#3458a8' },
  { name: 'grey-blue', least: 310, most: 338, shade: '#7690a4' },
];

/** The steel glows in the dark from about here: 400 °C, and people differ by 70. */
const GLOWS = 400;

/** °C: below, a part is no warmer than one that lay in the sun, and warming it is no work with heat. Judgement. */
export const HAND_WARM = 45;

/** What clean steel shows at this heat. */
export function colourSaid(celsius: number): string {
  const shown = TEMPER_COLOURS.filter(({ least, most }) => celsius >= least && celsius <= most);
  if (shown.length > 0) return shown.map(({ name }) => name).join(' or ');
  if (!(celsius >= TEMPER_COLOURS[0]!.least)) return 'no colour yet';
  if (celsius >= GLOWS) return 'a glow in the dark: far too hot for any fit';
  const next = TEMPER_COLOURS.findIndex(({ least }) => least > celsius);
  if (next < 0) return 'grey: past all the colours';
  return `something between ${TEMPER_COLOURS[next - 1]!.name} and ${TEMPER_COLOURS[next]!.name}`;
}
