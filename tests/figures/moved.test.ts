import { describe, expect, it } from 'vitest';
import { moved } from '../../src/views/map/moved.ts';
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
  it('puts the map under, beside or in place of the scene', () => {
    expect(roomFor({ width: 893, height: 840 })?.kind).toBe('tall');
    expect(roomFor({ width: 820, height: 530 })?.kind).toBe('wide');
    expect(roomFor({ width: 390, height: 380 })?.kind).toBe('small');
    expect(roomFor({ width: 844, height: 175 })?.kind).toBe('low');
    expect(roomFor({ width: 0, height: 0 })).toBeNull();
  });

  it('never gives the map more width than there is', () => {
    for (const [width, height] of [
      [320, 350],
      [390, 380],
      [700, 500],
      [1000, 900],
    ] as const) {
      const room = roomFor({ width, height })!;
      expect(room.mapWidth).toBeGreaterThan(200);
      expect(room.mapWidth).toBeLessThanOrEqual(width);
      expect(room.legendWidth).toBeLessThanOrEqual(width);
    }
  });
});
