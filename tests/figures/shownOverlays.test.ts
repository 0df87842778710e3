import { describe, expect, it } from 'vitest';
import { snappedCut } from '../../src/views/scene/cut.ts';
import { OVERLAYS, shownOverlays } from '../../src/views/scene/overlays.ts';

const all = Object.fromEntries(OVERLAYS.map(({ overlay }) => [overlay, true])) as Parameters<
  typeof shownOverlays
>[1];
const asked = { overlays: {}, section: 'read', story: null } as const;
const on = (shown: Readonly<Record<string, boolean>>) =>
  Object.keys(shown).filter((name) => shown[name]);

describe('what is laid over the drawing', () => {
  it('goes with the section that is read', () => {
    expect(on(shownOverlays({ ...asked, section: 'measure' }, all))).toEqual(['readings']);
    expect(on(shownOverlays(asked, all))).toEqual(['readings', 'zones']);
    expect(on(shownOverlays({ ...asked, section: 'plan' }, all))).toEqual([
      'target',
      'metal-off',
      'zones',
    ]);
    expect(on(shownOverlays({ ...asked, section: 'show' }, all))).toEqual([]);
    expect(on(shownOverlays({ ...asked, section: 'fit' }, all))).toEqual(['bushing', 'pressure']);
    // Where no contact is known, the low places tell where there will be none.
    const unknown = { ...all, pressure: false };
    expect(on(shownOverlays({ ...asked, section: 'fit' }, unknown))).toEqual(['low', 'bushing']);
  });

  it('what was switched by hand stays as it was switched, in every section', () => {
    const overlays = { circles: true, zones: false };
    for (const section of ['measure', 'read', 'plan', 'show'] as const) {
      const shown = shownOverlays({ ...asked, section, overlays }, all);
      expect([shown.circles, shown.zones]).toEqual([true, false]);
    }
  });

  it('a step of the story shows its own, and only while the story is told', () => {
    const overlays = { circles: true };
    const told = (story: 'new' | 'worn' | 'work' | 'done') =>
      on(shownOverlays({ overlays, section: 'show', story }, all));
    expect(told('new')).toEqual(['bushing']);
    expect(told('worn')).toEqual([]);
    expect(told('work')).toEqual(['metal-off']);
    expect(told('done')).toEqual(['bushing']);
    expect(on(shownOverlays({ ...asked, story: 'work' }, all))).not.toContain('metal-off');
  });

  it('nothing is shown that this bore does not have', () => {
    const none = { ...all, target: false, 'metal-off': false };
    const shown = shownOverlays({ ...asked, section: 'plan', overlays: { target: true } }, none);
    expect(on(shown)).toEqual(['zones']);
  });
});

describe('the cut', () => {
  it('goes to quarters of an hour, all round', () => {
    // 7 degrees, 1 degree before 12 and a turn on: the nearest multiples of 7.5 degrees.
    const degrees = (angle: number) => (snappedCut((angle * Math.PI) / 180) * 180) / Math.PI;
    expect(degrees(7)).toBeCloseTo(7.5, 9);
    expect(degrees(-1)).toBeCloseTo(0, 9);
    expect(degrees(-12)).toBeCloseTo(345, 9);
    expect(degrees(540)).toBeCloseTo(180, 9);
  });
});
