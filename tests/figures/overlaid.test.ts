/** What is laid over the bore in three dimensions, against what its lines and films stand for. */
import { describe, expect, it } from 'vitest';
import type { SurveyEvaluation } from '../../src/evaluate.ts';
import { circlesAt } from '../../src/figures/circles.ts';
import { fitOf } from '../../src/figures/fit.ts';
import { ghostOf } from '../../src/figures/ghost.ts';
import { layersOf } from '../../src/figures/layers.ts';
import { mapFigure } from '../../src/figures/map.ts';
import { wallWith, wearAt } from '../../src/figures/mesh.ts';
import { laidStrokes, readingNear } from '../../src/figures/overlaid.ts';
import { pieceFigure } from '../../src/figures/piece.ts';
import { sceneWords } from '../../src/figures/sceneWords.ts';
import { signsOf } from '../../src/figures/signs.ts';
import {
  circleStroke,
  ghostStrokes,
  type Stroke,
  spokes,
  sweptPath,
  targetStrokes,
} from '../../src/figures/strokes.ts';
import { FACTS, LENGTH, madeDeviation, madeSurvey, TARGET } from '../fixtures/evaluation.ts';

const CUT = 2.5;
const survey = madeSurvey();
const piece = pieceFigure(survey, FACTS, 'in', CUT)!;
const { shape } = piece;
const radius = TARGET / 2;
/** Straight lines between the corners of the mesh are off the curved wall by less, mm: a hundredth of a thou. */
const MESH = 3e-4;

const thetaOf = (phi: number) => phi + CUT + Math.PI;
const knotsOf = (strokes: readonly Stroke[]) => strokes.flatMap(({ knots }) => knots);

describe('lines on the wall', () => {
  it('the target’s edges lie on the size wanted, whatever the wear', () => {
    const strokes = targetStrokes(shape);
    expect(strokes).toHaveLength(6);
    for (const { wear, out } of knotsOf(strokes)) expect([wear, out]).toEqual([0, 0]);
    // Four along the depth, at 12, 3, 6 and 9.
    const sides = strokes.filter(({ kind }) => kind === 'target-side');
    const hours = sides.map(({ knots }) => Math.round((thetaOf(knots[0]!.phi) * 6) / Math.PI) % 12);
    expect([...hours].sort((a, b) => a - b)).toEqual([0, 3, 6, 9]);
    expect(sides[0]!.knots.at(-1)!.z).toBeCloseTo(LENGTH, 9);
  });

  it('a swept path follows the wall at its depth', () => {
    for (const { phi, z, wear } of sweptPath(shape, 12.7).knots) {
      expect(z).toBe(12.7);
      expect(Math.abs(wear - madeDeviation(thetaOf(phi), z))).toBeLessThan(MESH);
    }
  });

  it('a diameter is drawn from both ends to the middle of the hole', () => {
    const [one, two] = spokes('reading', shape, [
      { theta: 0.4, z: 5 },
      { theta: 0.4 + Math.PI, z: 5 },
    ]);
    for (const { knots } of [one!, two!]) {
      expect(knots).toHaveLength(2);
      expect(knots[1]!.reach).toBeCloseTo(-radius, 9);
      expect(Math.abs(knots[0]!.wear - madeDeviation(thetaOf(knots[0]!.phi), 5))).toBeLessThan(
        MESH,
      );
    }
    expect(Math.cos(thetaOf(one!.knots[0]!.phi) - thetaOf(two!.knots[0]!.phi))).toBeCloseTo(-1, 9);
  });

  it('a circle’s line keeps its radius about its own centre', () => {
    const circle = { x: 0.21, y: -0.13, radius: radius + 0.08 };
    for (const { phi, wear } of circleStroke('plug', shape, circle).knots) {
      const r = radius + wear;
      const [x, y] = [r * Math.sin(thetaOf(phi)), r * Math.cos(thetaOf(phi))];
      expect(Math.hypot(x - circle.x, y - circle.y)).toBeCloseTo(circle.radius, 9);
    }
  });

  it('another stage’s outline is that stage’s wall, seen about this one’s axis', () => {
    const axis = { x: 0.3, y: -0.2, leanX: 0.002, leanY: 0.001 };
    const later = madeSurvey({ deviation: (theta) => 0.05 * Math.cos(2 * theta) });
    for (const { phi, z, wear } of knotsOf(ghostStrokes(shape, ghostOf(later)!, axis))) {
      const r = radius + wear;
      const x = r * Math.sin(thetaOf(phi)) + axis.x + axis.leanX * z;
      const y = r * Math.cos(thetaOf(phi)) + axis.y + axis.leanY * z;
      const own = radius + 0.05 * Math.cos(2 * Math.atan2(x, y));
      expect(Math.abs(Math.hypot(x, y) - own)).toBeLessThan(MESH);
    }
    // About its own axis the stage itself is no farther off than its mesh.
    for (const { phi, z, wear } of knotsOf(
      ghostStrokes(shape, ghostOf(survey)!, { x: 0, y: 0, leanX: 0, leanY: 0 }),
    )) {
      expect(Math.abs(wear - wearAt(shape, phi, z))).toBeLessThan(4 * MESH);
    }
  });

  it('are drawn for what is switched on, and for the reading in hand alone', () => {
    const none = {
      ...{ target: false, circles: null, ghost: null, touched: null, readings: false },
      pressed: [],
    };
    const kinds = (strokes: readonly Stroke[]) => [...new Set(strokes.map(({ kind }) => kind))];
    expect(kinds(laidStrokes(piece, survey, { ...none, away: null }))).toEqual(['scale', 'cut']);
    // Cut in half there is no cut line to be moved.
    expect(kinds(laidStrokes(piece, survey, { ...none, away: 1 }))).toEqual(['scale']);
    const touched = readingNear(survey, piece, { theta: Math.PI / 6 + 0.02, z: 12.9 });
    expect(touched?.touches).toHaveLength(2);
    const all = laidStrokes(piece, survey, { ...none, target: true, touched, away: null });
    expect(all.filter(({ kind }) => kind === 'reading')).toHaveLength(2);
    expect(readingNear(survey, piece, { theta: 0.26, z: 19 })).toBeNull();
    expect(readingNear(survey, piece, null)).toBeNull();
    // The fourth reading is in doubt, and its line says so by its kind.
    const doubted = readingNear(survey, piece, { theta: Math.PI / 2, z: 2.5 });
    const line = laidStrokes(piece, survey, { ...none, touched: doubted, away: null });
    expect(line.filter(({ kind }) => kind === 'doubt')).toHaveLength(2);
  });
});

describe('films over the wall', () => {
  it('hold what is to come off and what a first pass may take', () => {
    const layers = layersOf(survey, 0)!;
    const { columns, rows } = layers;
    const { grid } = survey.surface!;
    const { likely, firstPass } = survey.removal!;
    // Places that both meshes have: every third of the survey's 120 and fourth of the film's 160 columns, every eighth
    // of its 64 and seventh of the film's 56 rows.
    let seen = 0;
    for (let row = 0; row <= rows; row += 7) {
      for (let column = 0; column < columns; column += 4) {
        const at = row * (columns + 1) + column;
        const from = ((8 * row) / 7) * grid.theta.length + (3 * column) / 4;
        expect(layers.off[at]).toBe(Math.fround(likely[from]!));
        expect(layers.pass[at]).toBe(Math.fround(firstPass[from]!));
        expect(layers.deviation[at]).toBe(Math.fround(survey.removal!.deviation[from]!));
        seen++;
      }
      expect(layers.off[row * (columns + 1) + columns]).toBe(layers.off[row * (columns + 1)]);
    }
    expect(seen).toBe(9 * 40);
  });

  it('are empty where no size is wanted', () => {
    const layers = layersOf(madeSurvey({ target: false }), 0)!;
    expect(Math.max(...layers.off, ...layers.pass)).toBe(0);
  });

  it('the wall without wear is round, and with the high metal off it is nowhere proud', () => {
    expect(Math.max(...wallWith(shape, 'nothing').deviation.map(Math.abs))).toBe(0);
    const low = wallWith(shape, 'low').deviation;
    shape.deviation.forEach((e, i) => {
      expect(low[i]).toBe(Math.max(0, e));
    });
  });
});

describe('what is written on the piece', () => {
  const texts = (away: number | null, filled = false, roll = 0) =>
    signsOf(piece, { zones: true, filled, away, roll }).map(({ text }) => text);

  it('peaks read as on the map, depths as on its scale, the hours once as a hole and the cut’s twice at the map', () => {
    const map = mapFigure(survey, FACTS, 'in', CUT)!;
    const written = texts(null);
    for (const { text } of [...map.zones, ...map.depthTicks]) expect(written).toContain(text);
    const six = pieceFigure(survey, FACTS, 'in', Math.PI)!;
    const hours = (roll: number) =>
      signsOf(six, { zones: false, filled: false, away: null, roll }).filter(
        ({ text }) => text === '6',
      );
    expect(hours(0)).toHaveLength(1);
    expect(hours(1)).toHaveLength(2);
    expect(written).toContain('face A');
    expect(written).toContain('arrow');
  });

  it('leaves the wall’s figures out where a pin stands before them, and the grip in a half', () => {
    expect(texts(null, true)).not.toContain(piece.zones[0]!.text);
    expect(texts(null, true, 0.5)).toContain(piece.zones[0]!.text);
    expect(texts(null)).toContain('knob');
    expect(texts(Math.PI / 2)).not.toContain('knob');
  });
});

/** Circles of a survey measured at two depths, made up. */
function circled(): SurveyEvaluation {
  const plug = (diameter: number) => ({
    axis: { x: 0.1, y: 0, leanX: 0, leanY: 0 },
    diameter,
    range: 0,
  });
  const four = (z: number) => ({
    z,
    average: plug(50.8),
    zone: plug(50.8),
    entering: z > 10 ? null : plug(50.6),
    around: plug(51),
  });
  return {
    ...survey,
    plugs: { from: 2.5, to: 36, sections: [four(2.5), four(36)], bore: null, taper: null },
  };
}

describe('the three circles', () => {
  it('are those of the nearest measured depth, across, and one that is not known is left out', () => {
    const near = circlesAt(circled(), 5, 'mm')!;
    expect(near.deep).toBe('2.5 mm');
    expect(near.circles.map(({ name, size }) => `${name} ${size}`)).toEqual([
      'biggest plug 50.600 mm',
      'average round 50.800 mm',
      'smallest clean-up 51.000 mm',
    ]);
    expect(near.circles[0]).toMatchObject({ x: 0.1, y: 0, radius: 25.3 });
    expect(circlesAt(circled(), 30, 'mm')!.circles).toHaveLength(2);
    expect(circlesAt(survey, 5, 'mm')).toBeNull();
  });
});

describe('bushing and pin', () => {
  const joint = (
    fresh: { outside: number; inside: number }[],
    pin: number | null,
  ): Parameters<typeof fitOf>[1] =>
    ({
      fresh: fresh.map((one) => ({ ...one, bore: 'Bore', name: 'Bushing', wall: Number.NaN })),
      parts: pin === null ? [] : [{ id: 'b pin', kind: 'pin', size: { mean: { mm: pin } } }],
    }) as unknown as Parameters<typeof fitOf>[1];
  const bore = { id: 'b', name: 'Bore', facts: FACTS };

  it('have their own sizes, and say where the inside is a guess', () => {
    const known = fitOf(bore, joint([{ outside: 50.85, inside: 38.2 }], 38))!;
    expect(known.bushings).toEqual([{ from: 0, to: LENGTH, outside: 25.425, inside: 19.1 }]);
    expect([known.pin, known.insideKnown]).toEqual([19, true]);
    const guessed = fitOf(bore, joint([{ outside: 50.85, inside: Number.NaN }], null))!;
    expect(guessed.insideKnown).toBe(false);
    expect(guessed.bushings[0]!.inside).toBeLessThan(guessed.bushings[0]!.outside);
    expect(guessed.pin).toBeNull();
    // A pin that does not go into the bushing is not drawn in it.
    expect(fitOf(bore, joint([{ outside: 50.85, inside: 38.2 }], 39))!.pin).toBeNull();
  });

  it('two seats are two bushings, and without any size there is none', () => {
    const seats = [
      { from: 0, to: 15 },
      { from: 30, to: LENGTH },
    ];
    const two = fitOf({ ...bore, facts: { ...FACTS, seats } }, joint([], null))!;
    expect(two.bushings.map(({ from, to }) => [from, to])).toEqual([
      [0, 15],
      [30, LENGTH],
    ]);
    const none = { ...FACTS, bushingOutside: { mm: Number.NaN, from: 'missing' as const } };
    expect(fitOf({ ...bore, facts: none }, joint([], null))).toBeNull();
  });
});

describe('the drawing in words', () => {
  it('names the view, the factor, the cut, what is laid over, every peak and the place pointed at', () => {
    const words = sceneWords(piece, {
      view: 'Looking in at face A',
      factor: 'wear drawn ×60',
      laid: ['readings, as pins', 'bushing and pin'],
      zones: true,
      circles: circlesAt(circled(), 5, 'mm'),
      fit: fitOf({ id: 'b', name: 'Bore', facts: FACTS }, {
        fresh: [],
        parts: [],
      } as unknown as Parameters<typeof fitOf>[1]),
      pressed: [],
      leftOut: null,
      ghost: 'Pass 1',
      place: '3:00, 0.40 in deep: take off 0.0031 in per side',
    }).join(' ');
    expect(words).toContain('Looking in at face A, wear drawn ×60.');
    expect(words).toContain('Shown on it: readings, as pins; bushing and pin.');
    for (const { text } of piece.zones) expect(words).toContain(`${text} at `);
    expect(words).toMatch(/Thou per side, minus is to come off: .*−4\.5 at 3:00/);
    expect(words).toContain('biggest plug 50.600 mm');
    expect(words).toContain('across');
    expect(words).toContain('since the inside is not given; no pin is known');
    expect(words).toContain('“Pass 1”');
    expect(words).toContain('Pointed at: 3:00, 0.40 in deep');
    expect(words).not.toMatch(/undefined|NaN/);
  });
});
