/** Two bushings in one bore: each goes in by its own room and temperatures, and has its own seconds. Constructed. */
import { describe, expect, it } from 'vitest';
import { closingOf } from '../../src/assembly/transient.ts';
import { type BushingFit, fitOfSurvey } from '../../src/evaluate/fit.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import type { Bushing, Job } from '../../src/job/schema.ts';
import { clocks, depthsWithin, jobOf, measure, round } from '../fixtures/bores.ts';

const mm = (text: string) => ({ text, unit: 'mm' as const });

/** The first ends where the second begins, with an oil space of 4 mm between them. */
const RIM: Bushing = {
  id: 'r',
  name: 'Rim bushing',
  seat: { face: 'A', from: mm('0'), to: mm('38') },
  outside: [mm('110')],
  inside: mm('90'),
  length: mm('38'),
  material: 'plain steel',
};
const BOTTOM: Bushing = {
  id: 'd',
  name: 'Bottom bushing',
  seat: { face: 'A', from: mm('42'), to: mm('80') },
  outside: [mm('110.03')],
  inside: mm('94'),
  length: mm('38'),
  material: 'bronze',
};

const memory: Memory = new Map();

/** A round bore of 109.90; a brass boss, which grows in a straight line by 20.2e-6 per kelvin. */
function fitted(bushings: readonly Bushing[]): readonly BushingFit[] {
  const taken = measure(round(54.95), 'radius', clocks(12, 2 * Math.PI), depthsWithin(5, 80));
  const job: Job = jobOf({
    taken,
    length: 80,
    nominal: 110,
    sd: 0.0002,
    feature: {
      boss: { outside: mm('200'), material: 'brass' },
      bushings: [...bushings],
      decisions: {
        target: mm('109.9'),
        centre: { rule: 'by-hand', x: mm('0'), y: mm('0') },
        fit: { wall: 'measured', heat: { cold: 'as-it-is', carry: '0' } },
      },
    },
  });
  const bore = evaluate(job, memory).bores[0]!;
  return fitOfSurvey(job, bore, bore.surveys[0]!, null)!.bushings;
}

const both = fitted([RIM, BOTTOM]);

describe('two bushings in one bore', () => {
  it.each([
    ['rim', 0, 110, 0.1],
    ['bottom', 1, 110.03, 0.13],
  ] as const)('the one at the %s has its own press fit, room and heat', (_, at, outside, press) => {
    const { heat } = both[at]!;
    // The wall is known to 0.0002 mm a reading; two sides.
    expect(Math.abs(heat.press - press)).toBeLessThan(0.001);
    // DIN 7190-1 and shop practice: a thousandth of the diameter, which is more than 0.0254 mm.
    expect(heat.room).toBeCloseTo(outside / 1000, 12);
    const row = heat.rows.find(({ cold }) => cold === 'as-it-is')!;
    expect(row.entry).toBe(20);
    // In a metal that grows in a straight line: dT = (press fit + room) / (expansion times bore).
    const bore = outside - heat.press;
    expect(row.boss - 20).toBeCloseTo((heat.press + heat.room) / (20.2e-6 * bore), 6);
    expect(heat.chosen!.room).toBeCloseTo(heat.room, 6);
  });

  it('takes more heat for the one that is pressed more, and leaves it other seconds', () => {
    const [rim, bottom] = both;
    expect(bottom!.heat.chosen!.boss).toBeGreaterThan(rim!.heat.chosen!.boss + 10);
    for (const { clock, heat, seated } of both) {
      // The closing of this very pair; the solution itself stands against a reference of its own.
      const alone = closingOf({
        inside: seated.inside,
        outside: seated.outside,
        bore: seated.outside - heat.press,
        bossOutside: 200,
        bushing: { metal: heat.bushing, celsius: 20 },
        boss: { metal: heat.boss, celsius: heat.chosen!.boss },
        air: 20,
        film: 10,
        contact: 'sliding',
      });
      expect(clock!.usual.seconds).toBeCloseTo(alone.seconds, 9);
      expect(clock!.usual.curve.room[0]).toBeCloseTo(heat.room, 6);
      expect(clock!.soonest.seconds).toBeLessThan(clock!.usual.seconds);
    }
    expect(rim!.heat.bushing.name).toBe('plain steel');
    expect(bottom!.heat.bushing.name).toBe('bronze');
    expect(bottom!.clock!.usual.seconds).not.toBeCloseTo(rim!.clock!.usual.seconds, 1);
  });

  it.each([RIM, BOTTOM])('$name is told as it would be alone', (bushing) => {
    const [alone] = fitted([bushing]);
    const one = both.find(({ seated }) => seated.id === bushing.id)!;
    expect(one.heat).toEqual(alone!.heat);
    expect(one.clock).toEqual(alone!.clock);
  });
});
