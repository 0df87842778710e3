import { describe, expect, it } from 'vitest';
import { mapSheet } from '../../src/figures/mapSheet.ts';
import { moved } from '../../src/views/map/moved.ts';
import { laidOut, pagesFor } from '../../src/views/map/pages.ts';
import { nearestQuarter, pointed, regionAt } from '../../src/views/map/pointing.ts';
import { roomFor } from '../../src/views/scene/room.ts';

const wall = { cut: Math.PI, height: 40 };

describe('keys on the map', () => {
  it('first put the cursor on the rim in the middle of the map', () => {
    expect(moved(null, 'ArrowDown', false, wall)).toEqual({ theta: 0, z: 0 });
  });

  it('go clockwise to the right and inward down, ten minutes or an hour at a time', () => {
    const from = { theta: 0, z: 10 };
    expect(moved(from, 'ArrowRight', true, wall)!.theta).toBeCloseTo(Math.PI / 6, 12);
    expect(moved(from, 'ArrowRight', false, wall)!.theta).toBeCloseTo(Math.PI / 36, 12);
    expect(moved(from, 'ArrowLeft', true, wall)!.theta).toBeCloseTo((11 * Math.PI) / 6, 12);
    expect(moved(from, 'ArrowDown', false, wall)).toEqual({ theta: 0, z: 11 });
    expect(moved(from, 'ArrowUp', true, wall)).toEqual({ theta: 0, z: 5 });
  });

  it('stop at rim and bottom, put the cursor away, and leave other keys alone', () => {
    const from = { theta: 1, z: 39.9 };
    expect(moved(from, 'ArrowDown', true, wall)!.z).toBe(40);
    expect(moved(from, 'Home', false, wall)!.z).toBe(0);
    expect(moved(from, 'End', false, wall)!.z).toBe(40);
    expect(moved(from, 'Escape', false, wall)).toBeNull();
    expect(moved(from, 'a', false, wall)).toBeUndefined();
  });
});

describe('room for the drawing', () => {
  it('puts the flat sheets under, beside or in place of the scene', () => {
    expect(roomFor({ width: 893, height: 840 })?.kind).toBe('tall');
    expect(roomFor({ width: 794, height: 660 })?.kind).toBe('wide');
    expect(roomFor({ width: 820, height: 530 })?.kind).toBe('wide');
    expect(roomFor({ width: 390, height: 380 })?.kind).toBe('small');
    expect(roomFor({ width: 844, height: 175 })?.kind).toBe('low');
    expect(roomFor({ width: 720, height: 202 })?.kind).toBe('low');
    expect(roomFor({ width: 0, height: 0 })).toBeNull();
  });

  it('never gives the key more width than there is', () => {
    for (const [width, height] of [
      [320, 350],
      [390, 380],
      [700, 500],
      [1000, 900],
    ] as const) {
      expect(roomFor({ width, height })!.legendWidth).toBeLessThanOrEqual(width);
    }
  });
});

/** A bore of 2 in and 1.75 in deep, rolled out, and a very deep one, mm. */
const WALLS = [
  { width: 159.6, height: 44.45 },
  { width: 40, height: 200 },
] as const;
const ROOMS = [
  [861, 268],
  [390, 420],
  [1158, 340],
  [358, 170],
  [420, 150],
  [861, 720],
  [280, 120],
] as const;

describe('the flat sheets', () => {
  it('fit into the room that there is, on every page', () => {
    for (const wall of WALLS) {
      for (const [width, height] of ROOMS) {
        for (const page of ['map', 'sections', 'across', 'along'] as const) {
          const laid = laidOut(wall, page, width, height);
          const parts = [laid.map, laid.across, laid.along].filter((one) => one !== null);
          expect(parts.length).toBeGreaterThan(0);
          const used = parts.reduce((sum, part) => sum + part.width, 0);
          const high = Math.max(...parts.map((part) => part.height));
          if (laid.flow === 'row') expect(used).toBeLessThanOrEqual(width + 1e-6);
          expect(high).toBeLessThanOrEqual(height + 1e-6);
          expect(Math.min(...parts.map((part) => part.width))).toBeGreaterThan(100);
        }
      }
    }
  });

  it('show all at once on a wide screen, and leave nothing to choose', () => {
    expect(pagesFor(1158, 340)).toEqual([]);
    const all = laidOut(WALLS[0], 'map', 1158, 340);
    expect([all.map, all.across, all.along].every((one) => one !== null)).toBe(true);
    expect(pagesFor(861, 268)).toEqual(['map', 'sections']);
    expect(pagesFor(358, 170)).toEqual(['map', 'across', 'along']);
  });

  it('put the strips in line with the map’s own scales', () => {
    const { frame, below, beside } = mapSheet(WALLS[0], 861, 300);
    expect(below).toMatchObject({ left: frame.left, width: frame.across });
    expect(beside).toMatchObject({ top: frame.top, height: frame.down });
    expect(mapSheet(WALLS[0], 300, 120)).toMatchObject({ below: null, beside: null });
  });
});

describe('pointing at the sheet', () => {
  const sheet = mapSheet(WALLS[0], 861, 300);
  const { frame, below, beside } = sheet;
  const map = { cut: Math.PI, height: WALLS[0].height };
  const middle = { x: frame.left + 0.75 * frame.across, y: frame.top + 0.5 * frame.down };

  it('reads both ways on the map, one way on a strip', () => {
    expect(regionAt(sheet, middle.x, middle.y)).toBe('map');
    const there = pointed(sheet, 'map', map, null, middle.x, middle.y);
    expect(there.theta).toBeCloseTo(Math.PI / 2, 9);
    expect(there.z).toBeCloseTo(0.5 * map.height, 9);
    const y = below!.top + 10;
    expect(regionAt(sheet, middle.x, y)).toBe('below');
    const round = pointed(sheet, 'below', map, { theta: 0, z: 7 }, middle.x, y);
    expect(round.theta).toBeCloseTo(Math.PI / 2, 9);
    expect(round.z).toBe(7);
    const x = beside!.left + 10;
    expect(regionAt(sheet, x, middle.y)).toBe('beside');
    expect(pointed(sheet, 'beside', map, { theta: 1, z: 0 }, x, middle.y)).toEqual({
      theta: 1,
      z: expect.closeTo(0.5 * map.height, 9),
    });
  });

  it('cuts the map open at whole quarters of an hour', () => {
    expect(nearestQuarter(Math.PI + 0.05)).toBeCloseTo(Math.PI, 12);
    expect(nearestQuarter(-0.13)).toBeCloseTo(2 * Math.PI - Math.PI / 24, 12);
    expect(nearestQuarter(2 * Math.PI - 0.01)).toBe(0);
  });
});
