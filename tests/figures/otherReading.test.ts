/** The other reading of the same numbers: which sides come into question, and what is worked out of them. */
import { describe, expect, it } from 'vitest';
import { evaluateOther } from '../../src/evaluate/otherReading.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { otherSides } from '../../src/figures/otherWords.ts';
import { setWornSide } from '../../src/job/edits.ts';
import { orchardBoomHinge } from '../../src/practice/demos/orchardBoomHinge.ts';
import { slipwayWinch } from '../../src/practice/demos/slipwayWinch.ts';

const job = slipwayWinch();
const memory: Memory = new Map();
const [bore] = evaluate(job, memory).bores;
const { id, surveys } = bore!;
const [found, , pass] = surveys;

describe('the other reading of the same numbers', () => {
  it('of a stated side is both sides alike', () => {
    expect(otherSides(found!, '6', 0)).toEqual([
      { wornSide: '', words: 'worn on both sides alike' },
    ]);
  });

  it('of both sides alike is either end of the long way, that of the load first', () => {
    const sides = (load: number) => otherSides(pass!, undefined, load).map((one) => one.wornSide);
    // The demo bore is longest along 3:30-9:30 after the pass, to the half hour.
    expect(sides(Math.PI / 2)).toEqual(['3:30', '9:30']);
    expect(sides(-Math.PI / 2)).toEqual(['9:30', '3:30']);
    // The load not stated: the lower end of the two.
    expect(sides(Number.NaN)).toEqual(['3:30', '9:30']);
  });

  it('is not offered where the readings show the side', () => {
    const hinge = evaluate(orchardBoomHinge()).bores[0]!.surveys;
    const pin = hinge.find(({ name }) => name.includes('pin'))!;
    expect(pin.target!.assumed).toBeNull();
    expect(otherSides(pin, undefined, Number.NaN)).toEqual([]);
    expect(otherSides(hinge[0]!, undefined, Number.NaN)).toHaveLength(2);
  });

  it('is what the job would give with that side, and changes neither the job nor what is remembered', () => {
    const before = JSON.stringify(job);
    const remembered = new Map(memory);
    const other = evaluateOther(job, { bore: id, survey: found!.id, wornSide: '' }, memory)!;
    const edited = evaluate(setWornSide(job, id, found!.id, '')).bores[0]!.surveys[0]!;
    expect(other.surface!.mean).toEqual(edited.surface!.mean);
    expect(other.target!.assumed).toBe('both sides alike');
    expect(JSON.stringify(job)).toBe(before);
    expect(memory).toEqual(remembered);
    expect(evaluate(job, memory).bores[0]!.surveys[0]).toBe(found);
  });

  it('reads the same on every gauge: opposite radii add up to the same diameters', () => {
    const other = evaluateOther(job, { bore: id, survey: found!.id, wornSide: '' }, memory)!;
    const surfaces = [found!.surface!, other.surface!] as const;
    const { grid } = surfaces[0];
    const half = grid.theta.length / 2;
    for (const { z } of found!.sections) {
      const row = grid.z.findIndex((depth) => depth >= z) * grid.theta.length;
      for (let at = 0; at < half; at += 10) {
        const across = (field: Float64Array) => field[row + at]! + field[row + at + half]!;
        const apart = Math.abs(across(surfaces[0].mean) - across(surfaces[1].mean));
        // Each surface holds its diameter to two standard deviations of both radii at most.
        expect(apart).toBeLessThan(2 * across(surfaces[0].sdSeen) + 2 * across(surfaces[1].sdSeen));
      }
    }
    // While the radii themselves are far apart: the wear is 0.3 mm across at the rim.
    const apart = surfaces[0].mean.map((r, k) => Math.abs(r - surfaces[1].mean[k]!));
    expect(Math.max(...apart)).toBeGreaterThan(0.1);
  });
});
