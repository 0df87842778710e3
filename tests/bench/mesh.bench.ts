import { bendBoss, bossMesh, WHOLE } from '../../src/figures/boss.ts';
import { ghostOf } from '../../src/figures/ghost.ts';
import { layersOf } from '../../src/figures/layers.ts';
import { mapFigure } from '../../src/figures/map.ts';
import { bendWall, wallMesh, wallShape } from '../../src/figures/mesh.ts';
import { laidStrokes, readingNear } from '../../src/figures/overlaid.ts';
import { pieceFigure } from '../../src/figures/piece.ts';
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
    name: 'place pointed at: lines laid over the bore gathered anew',
    bar: 8,
    prepare() {
      const survey = madeSurvey();
      const piece = pieceFigure(survey, FACTS, 'in', CUT)!;
      const ghost = ghostOf(survey);
      let theta = 0;
      return () => {
        theta += 0.1;
        const touched = readingNear(survey, piece, { theta, z: 12.7 });
        const none = { circles: null, away: null, pressed: [] };
        return laidStrokes(piece, survey, {
          ...none,
          target: true,
          ghost,
          touched,
          readings: true,
        });
      };
    },
  },
  {
    name: 'new evaluation: films drawn out anew',
    bar: 8,
    prepare() {
      const survey = madeSurvey();
      return () => layersOf(survey, CUT);
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
