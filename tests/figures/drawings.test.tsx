import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { FlatMap } from '../../src/drawings/FlatMap.tsx';
import { Legend } from '../../src/drawings/Legend.tsx';
import { MapCursor } from '../../src/drawings/MapCursor.tsx';
import { ProfileView } from '../../src/drawings/ProfileView.tsx';
import { SectionView } from '../../src/drawings/SectionView.tsx';
import { legendFigure } from '../../src/figures/legend.ts';
import { mapFigure } from '../../src/figures/map.ts';
import { mapFrame } from '../../src/figures/mapFrame.ts';
import { mapSheet } from '../../src/figures/mapSheet.ts';
import { profileFigure } from '../../src/figures/profileFigure.ts';
import { sectionFigure } from '../../src/figures/sectionFigure.ts';
import { sectionWords } from '../../src/figures/sectionWords.ts';
import { FACTS, madeSurvey } from '../fixtures/evaluation.ts';

const survey = madeSurvey({ columns: 36, rows: 17 });
const map = mapFigure(survey, FACTS, 'in')!;
const frame = mapFrame(map, 640);

/** Markup with pictures left out and long paths cut to their ends and their number of points, so that a change can be read. */
function readable(markup: string): string {
  return markup
    .replace(/href="data:[^"]+"/g, 'href="…"')
    .replace(/ d="([^"]{160,})"/g, (_, d: string) => {
      const points = d.split(/[ML]/).length - 1;
      return ` d="${d.slice(0, 40)} … ${points} points … ${d.slice(-24)}"`;
    })
    .replace(/></g, '>\n<');
}

describe('drawings, as text', () => {
  it('the flat map', () => {
    const drawing = <FlatMap map={map} frame={frame} theme="light" id="m" />;
    expect(readable(renderToStaticMarkup(drawing))).toMatchSnapshot();
  });

  it('the key, with room and without', () => {
    const legend = legendFigure(map.steps, 'light', 'target');
    const wide = <Legend legend={legend} theme="light" width={380} low={false} id="k" />;
    const low = <Legend legend={legend} theme="dark" width={340} low id="k" />;
    expect(readable(renderToStaticMarkup(wide))).toMatchSnapshot();
    expect(readable(renderToStaticMarkup(low))).toMatchSnapshot();
  });

  it('the cursor, the cut across and the size along', () => {
    const section = sectionFigure(survey, 12.7, 50)!;
    const profile = profileFigure(survey, FACTS, 'in')!;
    const drawings = [
      <MapCursor
        key="c"
        sheet={mapSheet(map, 640, 400)}
        theme="light"
        x={300}
        y={80}
        clock="3:10"
        depth="0.40"
      />,
      <SectionView
        key="s"
        section={section}
        words={sectionWords(section, 'in')}
        theme="light"
        size={240}
        at={{ theta: 1, text: '−2.1' }}
      />,
      <ProfileView key="p" profile={profile} theme="dark" width={480} height={220} at={0.4} />,
    ];
    for (const drawing of drawings) {
      expect(readable(renderToStaticMarkup(drawing))).toMatchSnapshot();
    }
  });

  it('the same map in both themes differs by colours alone', () => {
    const light = renderToStaticMarkup(<FlatMap map={map} frame={frame} theme="light" id="m" />);
    const dark = renderToStaticMarkup(<FlatMap map={map} frame={frame} theme="dark" id="m" />);
    const plain = (markup: string) =>
      markup.replace(/#[0-9a-f]{6}/g, '#').replace(/href="data:[^"]+"/g, '');
    expect(light).not.toBe(dark);
    expect(plain(dark)).toBe(plain(light));
  });

  it('no drawing holds a number that is none', () => {
    const holed = madeSurvey({
      deviation: (theta, z) => (z > 30 && theta < 2 ? Number.NaN : 0.05 * Math.cos(2 * theta)),
    });
    const figure = mapFigure(holed, { ...FACTS, load: Number.NaN }, 'mm')!;
    const hole = sectionFigure(holed, 35, 50)!;
    const drawings = [
      <FlatMap key="m" map={figure} frame={mapFrame(figure, 400)} theme="light" id="m" />,
      <SectionView
        key="s"
        section={hole}
        words={sectionWords(hole, 'mm')}
        theme="light"
        size={240}
        at={null}
      />,
    ];
    for (const drawing of drawings) {
      const markup = renderToStaticMarkup(drawing);
      expect(markup.length).toBeGreaterThan(300);
      expect(markup).not.toMatch(/NaN|undefined|Infinity/);
    }
  });
});
