/** The set-up picture of a squeeze: jaws and heat where they are told, the grip where it is, in every theme. */
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { SqueezeAcross, SqueezeAlong } from '../../src/drawings/SqueezeSetup.tsx';

const themes = ['light', 'dark', 'sunlight'] as const;

describe('the set-up of a squeeze', () => {
  it.each(themes)('%s: jaws across the long way, heat a quarter from them', (theme) => {
    const markup = renderToStaticMarkup(
      <SqueezeAcross
        jaws={Math.PI / 4}
        jawsAt={['1:30', '7:30']}
        heatAt={['4:30', '10:30']}
        theme={theme}
      />,
    );
    expect(markup).not.toMatch(/NaN|undefined|Infinity/);
    const turns = [...markup.matchAll(/rotate\((-?[\d.]+)\)/g)].map(([, turn]) => Number(turn));
    expect(turns).toEqual([45, 225, 135, -45]);
    for (const text of ['1:30', '7:30', '4:30', '10:30']) expect(markup).toContain(`>${text}<`);
  });

  it.each(themes)('%s: the jaws sit over the grip, and nowhere else', (theme) => {
    const markup = renderToStaticMarkup(
      <SqueezeAlong
        length={60}
        grip={{ from: 0, to: 30 }}
        gripText={{ from: '0.0 mm', to: '30.0 mm' }}
        measured={[5, 30, 55]}
        theme={theme}
      />,
    );
    expect(markup).not.toMatch(/NaN|undefined|Infinity/);
    // Half of the 240 that the bore is drawn long, from its left end at 46.
    const jaws = [...markup.matchAll(/<rect x="46" y="[\d.]+" width="120" height="27"/g)];
    expect(jaws).toHaveLength(2);
    expect(markup).toContain('jaws: 0.0 mm to 30.0 mm');
  });
});
