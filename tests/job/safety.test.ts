import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heatCautions, hotWork, SAFETY_QUESTIONS } from '../../src/job/safety.ts';
import type { Safety } from '../../src/job/schema.ts';
import { anySafety } from './jobs.ts';

const CLEAR: Safety = {
  openAndClean: 'yes',
  sealsAndPlatingOut: 'yes',
  metal: 'plain-steel',
  carriesPeople: 'no',
};

describe('the gate before flame or weld', () => {
  it('opens for a drained, stripped, plain steel part that carries nobody', () => {
    expect(hotWork(CLEAR)).toEqual({ open: true, stops: [], asks: [], signOff: null });
    expect(hotWork({ ...CLEAR, metal: 'known-alloy' }).open).toBe(true);
  });

  it('asks all four questions first', () => {
    const gate = hotWork({});
    expect(gate.open).toBe(false);
    expect(gate.asks).toEqual(SAFETY_QUESTIONS.map((one) => one.asks));
    expect(gate.asks).toHaveLength(4);
    expect(gate.stops).toEqual([]);
  });

  it.each<[keyof Safety, Safety[keyof Safety]]>([
    ['openAndClean', 'no'],
    ['openAndClean', 'unknown'],
    ['sealsAndPlatingOut', 'no'],
    ['sealsAndPlatingOut', 'unknown'],
    ['metal', 'iron'],
    ['metal', 'unknown'],
    ['carriesPeople', 'unknown'],
    ['carriesPeople', 'yes'],
  ])('stops at %s: %s, and says whom to ask', (question, answer) => {
    const gate = hotWork({ ...CLEAR, [question]: answer } as Safety);
    expect(gate.open).toBe(false);
    expect(gate.stops).toHaveLength(1);
    expect(gate.stops[0]).toMatchObject({ question, says: expect.stringMatching(/^Stop: .+\.$/) });
    expect(gate.stops[0]!.whom.length).toBeGreaterThan(10);
  });

  it('opens for a part that carries people only under a name', () => {
    expect(hotWork({ ...CLEAR, carriesPeople: 'yes', signedOffBy: '  ' }).open).toBe(false);
    expect(hotWork({ ...CLEAR, carriesPeople: 'yes', signedOffBy: ' A. Weld ' })).toEqual({
      open: true,
      stops: [],
      asks: [],
      signOff: 'A. Weld',
    });
    expect(hotWork({ ...CLEAR, signedOffBy: 'A. Weld' }).signOff).toBeNull();
  });

  it('never opens unless every answer is a clear one', () => {
    let opened = 0;
    fc.assert(
      fc.property(anySafety, (safety) => {
        const gate = hotWork(safety);
        const clear =
          safety.openAndClean === 'yes' &&
          safety.sealsAndPlatingOut === 'yes' &&
          (safety.metal === 'plain-steel' || safety.metal === 'known-alloy') &&
          (safety.carriesPeople === 'no' ||
            (safety.carriesPeople === 'yes' && (safety.signedOffBy ?? '').trim() !== ''));
        expect(gate.open).toBe(clear);
        if (gate.open) opened++;
      }),
      { numRuns: 2000 },
    );
    expect(opened).toBeGreaterThan(0);
  });

  it('stands with cautions that follow the answers', () => {
    expect(heatCautions(CLEAR).join(' ')).toContain('closed pockets');
    expect(heatCautions({ ...CLEAR, metal: 'known-alloy' }).join(' ')).toContain('tempered');
    expect(heatCautions(CLEAR).join(' ')).not.toContain('tempered');
    expect(heatCautions({ ...CLEAR, carriesPeople: 'yes' }).join(' ')).toContain('signs');
  });
});
