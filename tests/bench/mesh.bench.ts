import { bendBoss, bossMesh, WHOLE } from '../../src/figures/boss.ts';
import { mapFigure } from '../../src/figures/map.ts';
import { bendWall, wallMesh, wallShape } from '../../src/figures/mesh.ts';
import { stepsOf, wallOf } from '../../src/figures/wall.ts';
import { FACTS, madeSurvey } from '../fixtures/evaluation.ts';
import type { Bench } from './bench.ts';

const CUT = Math.PI;

function madeShape() {
  const wall = wallOf(madeSurvey())!;
  return wallShape(wall, stepsOf(wall, 'in').step, CUT);
}

export const benches: Bench[] = [
  {
    name: 'roll-out: wall and boss refilled, 256 x 128',
    bar: 8,
    prepare() {
      const shape = madeShape();
      const wall = wallMesh(shape);
      const boss = bossMesh(shape);
      let roll = 0;
      return () => {
        roll = (roll + 0.013) % 1;
        bendWall(shape, roll, 50, wall);
        bendBoss(shape, roll, 18, WHOLE, wall, boss);
      };
    },
  },
  {
    name: 'new evaluation: wall drawn out anew, 256 x 128',
    prepare: () => madeShape,
  },
  {
    name: 'new evaluation: flat map with its contours',
    bar: 33,
    prepare() {
      const survey = madeSurvey();
      return () => mapFigure(survey, FACTS, 'in', CUT);
    },
  },
];
