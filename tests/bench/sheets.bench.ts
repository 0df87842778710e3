import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { FlatMap } from '../../src/drawings/FlatMap.tsx';
import { mapFigure } from '../../src/figures/map.ts';
import { mapSheet } from '../../src/figures/mapSheet.ts';
import { profileFigure } from '../../src/figures/profileFigure.ts';
import { sectionFigure } from '../../src/figures/sectionFigure.ts';
import { stripDown, stripRound, stripScale } from '../../src/figures/strips.ts';
import { wallOf } from '../../src/figures/wall.ts';
import { FACTS, madeSurvey } from '../fixtures/evaluation.ts';
import type { Bench } from './bench.ts';

const ROOM = { width: 606, height: 268 } as const;

export const benches: Bench[] = [
  {
    // One step of the target's handle, as far as the flat sheets go: figures anew, the map drawn anew. No bar: here the
    // map becomes text, and its picture by an engine that is slow at that; a browser changes what stands already.
    name: 'new evaluation: map, profiles and sections drawn',
    prepare() {
      const from = madeSurvey();
      return () => {
        const survey = { ...from };
        const map = mapFigure(survey, FACTS, 'in')!;
        const { frame } = mapSheet(map, ROOM.width, ROOM.height);
        const drawn = renderToStaticMarkup(
          createElement(FlatMap, { map, frame, theme: 'light', id: 'm' }),
        );
        const wall = wallOf(survey)!;
        const strips = [stripRound(wall, Math.PI, 12), stripDown(wall, 1), stripScale(wall, 'in')];
        return [drawn, strips, sectionFigure(survey, 12, 20), profileFigure(survey, FACTS, 'in')];
      };
    },
  },
  {
    name: 'cursor moved: profiles and section',
    bar: 8,
    prepare() {
      const survey = madeSurvey();
      const wall = wallOf(survey)!;
      let z = 0;
      return () => {
        z = (z + 0.37) % wall.length;
        return [stripRound(wall, Math.PI, z), stripDown(wall, z), sectionFigure(survey, z, 20)];
      };
    },
  },
];
