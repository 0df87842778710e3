/** The trade-off chart: its figures against the evaluation's, its words, its names apart, and the drawing as text. */
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { TradeOffChart, TradeOffHandle, tradeOffFrame } from '../../src/drawings/TradeOffChart.tsx';
import { ofSurvey } from '../../src/evaluate/tradeOff.ts';
import {
  markLanes,
  tableRows,
  textAt,
  tradeOffFigure,
  valueAt,
} from '../../src/figures/tradeOff.ts';
import { sayTradeOff, tradeOffWords } from '../../src/figures/tradeOffWords.ts';
import { FACTS, madeSurvey, TARGET } from '../fixtures/evaluation.ts';

const survey = madeSurvey({ columns: 36, rows: 17 });
const sizes = ofSurvey(survey, FACTS, 'in')!;
const figure = tradeOffFigure(sizes, 'in');
const frame = tradeOffFrame(figure, 560, 'light');

describe('figures', () => {
  it('are those of the evaluation, in inches', () => {
    const [off, held, gap] = figure.panels;
    figure.diameters.forEach((inches, i) => {
      const point = sizes.points[i]!;
      expect(inches * 25.4).toBeCloseTo(point.diameter, 9);
      expect(off!.curves[0]!.values[i]).toBe(point.mass);
      expect(held!.curves[0]!.values[i]).toBe(100 * point.hand!.likely);
      expect(gap!.curves[0]!.values[i]! * 25.4).toBeCloseTo(point.gap.over, 9);
    });
  });

  it('lie between their neighbours, and nowhere outside', () => {
    const xs = [1, 2, 4];
    expect([1, 1.5, 3, 4].map((at) => valueAt(xs, [0, 10, 30], at))).toEqual([0, 5, 20, 30]);
    expect(valueAt(xs, [0, 10, 30], 0.9)).toBeNaN();
    expect(valueAt(xs, [0, 10, 30], 4.1)).toBeNaN();
  });

  it('the range is in round steps about every mark', () => {
    for (const { at } of figure.marks) {
      expect(at).toBeGreaterThan(figure.least);
      expect(at).toBeLessThan(figure.greatest);
    }
    expect(Math.round(figure.least * 1e4)).toBeCloseTo(figure.least * 1e4, 6);
  });

  it('names under the axis stay inside and never cover one another', () => {
    for (const width of [320, 390, 640]) {
      const { x, letters } = tradeOffFrame(figure, width, 'sunlight');
      const letter = letters * 0.52;
      const lanes = markLanes(figure, x, [0, width], letter);
      expect(lanes).toHaveLength(figure.marks.length);
      for (const [i, a] of lanes.entries()) {
        const half = (a.name.length * letter) / 2;
        expect(a.middle - half).toBeGreaterThanOrEqual(0);
        expect(a.middle + half).toBeLessThanOrEqual(width);
        for (const b of lanes.slice(i + 1)) {
          const apart = Math.abs(a.middle - b.middle);
          const room = half + (b.name.length * letter) / 2;
          expect(a.lane !== b.lane || apart >= room).toBe(true);
        }
      }
    }
  });

  it('the table says what the chart does, every mark by name', () => {
    const rows = tableRows(figure);
    const named = rows.filter(({ name }) => name !== '').map(({ name }) => name);
    expect(named).toEqual(['bushing less press fit', 'bushing']);
    const usual = rows.find(({ name }) => name === 'bushing less press fit')!;
    expect(usual.size).toBe('1.9980');
    expect(usual.cells).toEqual(figure.panels.map((panel) => textAt(figure, panel, TARGET / 25.4)));
  });
});

describe('words', () => {
  const share = { likely: 0.62, least: 0.57, most: 0.68 };
  const seating = {
    hand: share,
    suit: share,
    gap: { over: 0.2057, theta: Math.PI, z: 3.81, give: 0.01524 },
    behind: 0.2057 - 0.0254,
  };
  const removal = { ...survey.removal!, mass: 1.1, sureMass: 0.4, possibleMass: 2.6 };
  const target = { ...survey.target!, diameter: 50.9041 };
  const say = (more: Partial<typeof seating> = {}, bushing = 50.9549) =>
    sayTradeOff(tradeOffWords(target, removal, { ...seating, ...more }, bushing, 'in'));

  it('tell size, metal, seat, gap and what of it stays behind the bushing', () => {
    expect(say()).toBe(
      'At 2.0041 in across: 1.1 g off (0.4 to 2.6), 62 % of the seat held (57 to 68), worst gap 0.0081 in per side ' +
        'over the target at 6:00, 0.15 in deep, give or take 0.0006 (0.0071 of it left behind the bushing at hand).',
    );
  });

  it('tell apart the bushing at hand and one made to suit', () => {
    const suit = { likely: 0.8, least: 0.75, most: 0.86 };
    expect(say({ suit })).toContain('a bushing made to suit would be held on 80 % (75 to 86).');
    expect(say({}, 50.9)).toContain('none of the seat held: the bushing at hand is loose in it');
    const words = tradeOffWords(
      target,
      removal,
      { ...seating, hand: null, behind: Number.NaN },
      Number.NaN,
      'in',
    );
    expect(sayTradeOff(words)).toContain(
      '62 % of the seat held by a bushing made to suit (57 to 68)',
    );
  });

  it('tell of no gap where there is none', () => {
    expect(say({ gap: { ...seating.gap, over: 0 } })).toContain('no place over the target');
  });
});

describe('the drawing', () => {
  it('as text', () => {
    const drawings = [
      <TradeOffChart key="c" figure={figure} frame={frame} theme="light" />,
      <TradeOffHandle key="h" figure={figure} frame={frame} theme="light" at={TARGET / 25.4} />,
    ];
    for (const drawing of drawings) {
      const markup = renderToStaticMarkup(drawing);
      expect(markup).not.toMatch(/NaN|undefined|Infinity/);
      const readable = markup
        .replace(/ d="([^"]{160,})"/g, (_, d: string) => ` d="${d.slice(0, 40)} … ${d.slice(-24)}"`)
        .replace(/></g, '>\n<');
      expect(readable).toMatchSnapshot();
    }
  });

  it('without a bushing has one line of what is held, full', () => {
    const bare = { ...FACTS, bushingOutside: { mm: Number.NaN, from: 'missing' as const } };
    const one = tradeOffFigure(ofSurvey(survey, bare, 'mm')!, 'mm');
    expect(one.panels[1]!.curves.map(({ of }) => of)).toEqual(['suit']);
    const markup = renderToStaticMarkup(
      <TradeOffChart figure={one} frame={tradeOffFrame(one, 358, 'dark')} theme="dark" />,
    );
    expect(markup).not.toMatch(/NaN|undefined|Infinity/);
    expect(markup).not.toContain('stroke-dasharray="7 4"');
  });
});
