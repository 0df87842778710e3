import { describe, expect, it } from 'vitest';
import { acrossGive } from '../../src/figures/acrossGive.ts';
import { profileFigure, sizesAt } from '../../src/figures/profileFigure.ts';
import { depthScale, sizeScale, spread } from '../../src/figures/profileFrame.ts';
import { lineWords, profileSentence } from '../../src/figures/profileWords.ts';
import { sectionFigure } from '../../src/figures/sectionFigure.ts';
import { sectionWords } from '../../src/figures/sectionWords.ts';
import { signedText } from '../../src/figures/signed.ts';
import { stripDown, stripRound, stripRun, stripScale } from '../../src/figures/strips.ts';
import { tellingPlace } from '../../src/figures/tellingPlace.ts';
import { wallOf } from '../../src/figures/wall.ts';
import { FACTS, LENGTH, madeDeviation, madeSurvey, TARGET } from '../fixtures/evaluation.ts';

const THOU = 0.0254;
const survey = madeSurvey();
const wall = wallOf(survey)!;

describe('the profiles beside the map', () => {
  it('are the deviation along the line through the place, from the cut and from the rim', () => {
    const round = stripRound(wall, Math.PI, 12);
    expect(round[0]!.along).toBe(0);
    expect(round.at(-1)!.along).toBeCloseTo(Math.PI * TARGET, 6);
    // Grid lines are 3 degrees and 0.69 mm apart; the gouge, 6.2 thou deep, bends by up to 2 x 6.2 / 0.2^2 thou a
    // square radian and 2 x 6.2 / 3.2^2 a square mm: a straight line misses an eighth of that times the square of a step.
    const miss = (THOU * 2 * 6.2 * ((Math.PI / 60) ** 2 / 0.2 ** 2 + 0.69 ** 2 / 3.2 ** 2)) / 8;
    for (const { along, deviation } of round) {
      const theta = Math.PI + along / (TARGET / 2);
      expect(Math.abs(deviation - madeDeviation(theta, 12))).toBeLessThan(1.5 * miss);
    }
    for (const { along, deviation } of stripDown(wall, 2.36)) {
      expect(Math.abs(deviation - madeDeviation(2.36, along))).toBeLessThan(1.5 * miss);
    }
  });

  it('have one scale that holds all of the wall and the line of right, proud metal first', () => {
    const scale = stripScale(wall, 'in')!;
    expect(scale.from).toBeLessThan(Math.min(...wall.deviation));
    expect(scale.to).toBeGreaterThan(Math.max(...wall.deviation));
    expect(scale.ticks.map(({ text }) => text)).toContain('0');
    expect(scale.ticks[0]!.text).toMatch(/^−/);
    const only = wallOf(madeSurvey({ deviation: () => 0.05 }))!;
    expect(stripScale(only, 'mm')!.from).toBeLessThanOrEqual(0);
    expect(stripScale(wallOf(madeSurvey({ deviation: () => Number.NaN }))!, 'mm')).toBeNull();
  });

  it('stand up towards the map, and to the left beside it', () => {
    const scale = stripScale(wall, 'in')!;
    const lying = stripRun(scale, 100, { width: 500, height: 60 }, false);
    expect(lying.run(50)).toBe(250);
    expect(lying.rise(-0.05)).toBeLessThan(lying.rise(0));
    expect(lying.rise(-9)).toBe(0);
    const upright = stripRun(scale, 100, { width: 90, height: 200 }, true);
    expect(upright.run(50)).toBe(100);
    expect(upright.rise(9)).toBe(90);
  });

  it('sign their figure by the action, with no more digits than are known', () => {
    expect(signedText(-3.5 * THOU, 0.3 * THOU, 'in')).toBe('−3.5');
    expect(signedText(4.1 * THOU, 2 * THOU, 'in')).toBe('+4');
    expect(signedText(0.01 * THOU, 0.3 * THOU, 'in')).toBe('0.0');
    expect(signedText(Number.NaN, 0, 'mm')).toBe('');
  });
});

describe('the cut across, in figures', () => {
  // An oval of 0.1 mm per side along 12-6 about a circle 0.02 mm over the target.
  const oval = madeSurvey({
    deviation: (theta) => 0.02 + 0.1 * Math.cos(2 * theta),
    sd: () => 0.001,
  });
  const section = sectionFigure(oval, 20, 50)!;

  it('names its least and greatest diameters and where they lie', () => {
    expect(section.greatest!.diameter).toBeCloseTo(TARGET + 0.24, 9);
    expect(section.least!.diameter).toBeCloseTo(TARGET - 0.16, 9);
    expect(Math.abs(Math.sin(section.greatest!.theta))).toBeLessThan(1e-9);
    expect(Math.abs(Math.cos(section.least!.theta))).toBeLessThan(1e-9);
    expect(acrossGive(oval, 20)).toBeCloseTo(0.004, 9);
    const { sentence, circles } = sectionWords(section, 'mm');
    expect(sentence).toContain('greatest 50.989 along 12–6, least 50.589 along 3–9');
    expect(sentence).toContain('0.400 mm out of round, all across');
    expect(circles.map(({ diameter }) => diameter)).toEqual(['50.749', '50.789']);
  });

  it('says at a measured depth what the tables say', () => {
    const measured = sectionFigure(survey, 12.7, 50)!;
    const told = survey.sections.find(({ z }) => z === 12.7)!;
    expect(measured.greatest).toBe(told.greatest);
    expect(measured.give).toBe(told.give);
  });

  it('draws the biggest plug and the smallest clean-up about the axis of the target', () => {
    const at = (x: number, diameter: number) => ({
      axis: { x, y: 0, leanX: 0, leanY: 0 },
      diameter,
      range: 0,
    });
    const four = { average: null, zone: null, entering: at(0.03, 50.6), around: at(0.01, 51) };
    const plugs = { from: 20, to: 20, sections: [{ z: 20, ...four }], bore: null, taper: null };
    const target = { ...oval.target!, axis: { x: 0.01, y: 0, leanX: 0.0005, leanY: 0 } };
    const [average, entering, around] = sectionFigure({ ...oval, plugs, target }, 20, 50)!.circles;
    expect(average!.kind).toBe('average');
    // 20 mm down the axis has gone 0.01 mm to the right of where it entered.
    expect(entering!.x).toBeCloseTo(50 * (0.03 - 0.01 - 0.01), 9);
    expect(entering!.radius).toBeCloseTo(TARGET / 2 + 50 * (25.3 - TARGET / 2), 9);
    expect(around!.x).toBeCloseTo(50 * (0.01 - 0.01 - 0.01), 9);
    expect(sectionFigure({ ...oval, plugs, target }, 30, 50)!.circles).toHaveLength(1);
  });

  it('has nothing to say of what is not known', () => {
    const holed = madeSurvey({ deviation: (_, z) => (z > 30 ? Number.NaN : 0) });
    const nothing = sectionFigure(holed, 40, 50)!;
    expect([nothing.least, nothing.greatest, nothing.circles]).toEqual([null, null, []]);
    expect(sectionWords(nothing, 'mm').sentence).toBe('Cut across 40.0 mm deep: not known there.');
    expect(profileSentence(holed, 40, 'mm')).toBe('40.0 mm deep: not known.');
  });
});

describe('the size along, in figures', () => {
  it('says least, mean and greatest at the depth pointed at', () => {
    const sizes = sizesAt(survey, 20);
    expect(sizes.least).toBeLessThan(sizes.mean);
    expect(profileSentence(survey, 12.7, 'in')).toMatch(
      /^0\.50 in deep: least \d\.\d+, mean \d\.\d+, greatest \d\.\d+ in, across\.$/,
    );
    expect(profileSentence(survey, null, 'in')).toContain('across');
  });

  it('reads a depth back from the plot, held to the bore', () => {
    const profile = profileFigure(survey, FACTS, 'in')!;
    const x = depthScale(profile, 480);
    expect(x.invert(x(1.1))).toBeCloseTo(1.1, 9);
    expect(x.invert(9999)).toBeCloseTo(LENGTH / 25.4, 9);
    const y = sizeScale(profile, 200);
    expect(y(profile.range.greatest)).toBeLessThan(y(profile.range.least));
    expect(lineWords(profile)).toContain('where the bushing sits');
    expect(lineWords({ ...profile, seats: [], measured: [] })).toBe('');
  });

  it('moves names apart and keeps their order', () => {
    const heights = spread([50, 48, 52, 10], 14, 0, 100);
    const [a, b, c, d] = heights as [number, number, number, number];
    expect(b).toBe(48);
    expect(a - b).toBeGreaterThanOrEqual(14);
    expect(c - a).toBeGreaterThanOrEqual(14);
    expect(d).toBe(10);
    expect(Math.max(...spread([95, 96, 97], 14, 0, 100))).toBeLessThanOrEqual(100);
  });
});

describe('where the drawing points at first', () => {
  it('is the most metal to come off, else the most that is missing, else the farthest from right', () => {
    expect(tellingPlace(survey)).toEqual({ theta: Math.PI / 2, z: 0 });
    const low = survey.zones.filter(({ kind }) => kind === 'low');
    expect(tellingPlace({ ...survey, zones: low })).toEqual({ theta: 2.36, z: 10.2 });
    const bump = madeSurvey({
      deviation: (theta, z) => (theta === 0 && z === 0 ? -0.2 : 0.1),
      target: false,
    });
    expect(tellingPlace(bump)).toEqual({ theta: 0, z: 0 });
    expect(tellingPlace({ ...survey, zones: [], surface: null })).toBeNull();
  });
});
