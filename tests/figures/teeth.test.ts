import { describe, expect, it } from 'vitest';
import { mapFigure } from '../../src/figures/map.ts';
import { teethOf } from '../../src/figures/teeth.ts';
import { wallAt, wallOf } from '../../src/figures/wall.ts';
import { FACTS, madeSurvey } from '../fixtures/evaluation.ts';

describe('teeth of a line', () => {
  it('stand at even distances, round corners too, to the side that is asked for', () => {
    const corner = [
      [0, 0],
      [10, 0],
      [10, 9],
    ] as const;
    expect(teethOf(corner, 8, 3)).toEqual([
      [
        [4, 0],
        [4, -3],
      ],
      [
        [10, 2],
        [13, 2],
      ],
    ]);
    expect(teethOf(corner, 8, -3)[0]![1]).toEqual([4, 3]);
    expect(teethOf(corner, 100, 3)).toEqual([]);
  });

  it('on the map they point to the metal, sure and possible', () => {
    // An oval 0.1 mm out, known to 0.02 mm: sure and possible metal all along the depth.
    const made = madeSurvey({
      deviation: (theta, z) => 0.1 * Math.cos(2 * theta) + 0.001 * z,
      sd: () => 0.01,
    });
    const map = mapFigure(made, FACTS, 'mm')!;
    const wall = wallOf(made)!;
    for (const [lines, larger] of [
      [map.sure, 1],
      [map.possible, -1],
    ] as const) {
      const teeth = lines.flatMap(({ points }) => teethOf(points, 3, -1));
      expect(teeth.length).toBeGreaterThan(20);
      for (const [, to] of teeth) {
        if (to[0] < 0 || to[0] > map.width || to[1] < 0 || to[1] > map.height) continue;
        const { deviation, give } = wallAt(wall, to[0] / map.radius + map.cut, to[1]);
        expect(deviation + larger * give).toBeLessThan(0);
      }
    }
  });
});
