import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { FlatMap } from '../../src/drawings/FlatMap.tsx';
import { Legend } from '../../src/drawings/Legend.tsx';
import { MapCursor } from '../../src/drawings/MapCursor.tsx';
import { PinMap } from '../../src/drawings/PinMap.tsx';
import { ProfileView } from '../../src/drawings/ProfileView.tsx';
import { SectionView } from '../../src/drawings/SectionView.tsx';
import { legendFigure } from '../../src/figures/legend.ts';
import { mapFigure } from '../../src/figures/map.ts';
import { mapFrame } from '../../src/figures/mapFrame.ts';
import { mapSheet } from '../../src/figures/mapSheet.ts';
import { profileFigure } from '../../src/figures/profileFigure.ts';
import { sectionFigure } from '../../src/figures/sectionFigure.ts';
import { sectionWords } from '../../src/figures/sectionWords.ts';
import { roomFor } from '../../src/views/scene/room.ts';
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
        map={map}
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

  it('no rectangle is less than nothing, however little room the page has', () => {
    const legend = legendFigure(map.steps, 'light', 'target');
    for (const theme of ['light', 'sunlight'] as const)
      for (const size of [1, 93, 160]) {
        const room = roomFor({ width: size, height: size });
        const markup = renderToStaticMarkup(
          <>
            {room !== null && (
              <Legend legend={legend} theme={theme} width={room.legendWidth} low id="k" />
            )}
            <FlatMap map={map} frame={mapFrame(map, size, size)} theme={theme} id="m" />
            <PinMap map={map} theme={theme} width={size} height={Math.round(size / 2)} id="p" />
          </>,
        );
        expect(markup).toContain('<rect');
        expect(markup, `${size} px, ${theme}`).not.toMatch(/(?:width|height)="-/);
      }
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

describe('the line over the map', () => {
  /** Where texts lie on the line, px, taking letters as 6 px wide: wider than Barlow's, whose mean is 5.9 at 13 px. */
  const spans = (markup: string, top: number) =>
    [...markup.matchAll(/<text x="([\d.-]+)" y="([\d.-]+)"( text-anchor="end")?[^>]*>([^<]+)</g)]
      .filter(([, , y]) => Number(y) === top - 8)
      .map(([, x, , end, text]) => {
        const wide = 6 * text!.length;
        return end === undefined ? [Number(x), Number(x) + wide] : [Number(x) - wide, Number(x)];
      })
      .sort((a, b) => a[0]! - b[0]!);

  it('keeps face, unit and load apart, wherever the load pulls and however narrow it is', () => {
    for (const width of [300, 366, 500, 861]) {
      for (let hour = 0; hour < 12; hour++) {
        const loaded = mapFigure(survey, { ...FACTS, load: (hour * Math.PI) / 6 }, 'mm')!;
        const narrow = mapFrame(loaded, width, 200, 0.7);
        const drawing = <FlatMap map={loaded} frame={narrow} theme="light" id="m" />;
        const found = spans(renderToStaticMarkup(drawing), narrow.top);
        // On the narrowest the flag may stand without its word.
        expect(found.length).toBeGreaterThanOrEqual(width > 480 ? 3 : 2);
        for (let i = 1; i < found.length; i++) {
          expect(found[i]![0]!, `${width} px, ${hour}:00`).toBeGreaterThanOrEqual(
            found[i - 1]![1]!,
          );
        }
      }
    }
  });
});
