/** Metals of a job: which one a text names, its own figures, and own entries. */
import { describe, expect, it } from 'vitest';
import { setFit } from '../../src/job/edits.ts';
import { addMaterial, removeMaterial, setMaterialFigure } from '../../src/job/materialEdits.ts';
import { materialFacts } from '../../src/job/materialFacts.ts';
import { pressFacts } from '../../src/job/pressFacts.ts';
import type { Job } from '../../src/job/schema.ts';
import { MOST } from '../../src/job/typed.ts';
import { smallJob } from './jobs.ts';

const job = smallJob();
const added = (name: string, to: Job = job) => {
  const tried = addMaterial(to, name);
  if (!tried.ok) throw new Error(tried.why);
  return tried.job;
};

describe('a metal of the job', () => {
  it('is a usual one with usual figures, or plain steel where the text names none', () => {
    const usual = { stated: {}, faulty: [] };
    expect(materialFacts(job, 'Bearing bronze')).toEqual({
      name: 'bronze',
      metal: 'bronze',
      named: true,
      ...usual,
    });
    const plain = { name: 'plain steel', metal: 'plain steel', named: false, ...usual };
    expect(materialFacts(job, undefined)).toEqual(plain);
    expect(materialFacts(job, 'driftwood')).toEqual(plain);
  });

  it('has the figures that are stated, in the program’s units, until they are taken back', () => {
    let own = setMaterialFigure(job, 'bronze', 'elastic', '97,5');
    own = setMaterialFigure(own, 'bronze', 'expansion', '18.3');
    const { stated } = materialFacts(own, 'bronze bushing');
    expect(stated.elastic).toBe(97_500);
    expect(stated.expansion).toBeCloseTo(18.3e-6, 15);
    own = setMaterialFigure(own, 'bronze', 'elastic', undefined);
    expect(setMaterialFigure(own, 'bronze', 'expansion', undefined)).toEqual(job);
    expect(setMaterialFigure(job, 'bronze', 'melts', undefined)).toBe(job);
  });

  it.each([
    ['elastic', '0'],
    ['elastic', 'stiff'],
    ['poisson', '0.5'],
    ['yield', '-200'],
    ['expansion', '11500'],
    ['density', '7.85'],
    ['melts', '1e9'],
  ] as const)('leaves out a %s of “%s”, and says so', (figure, text) => {
    const facts = materialFacts(setMaterialFigure(job, 'brass', figure, text), 'brass');
    expect(facts.faulty).toEqual([figure]);
    expect(facts.stated).toEqual({});
  });

  it('of one’s own goes by its name and takes the figures of the metal that the name tells', () => {
    const own = setMaterialFigure(
      added('Mill’s manganese bronze'),
      'mill’s MANGANESE bronze',
      'yield',
      '310',
    );
    expect(own.materials).toHaveLength(1);
    expect(materialFacts(own, ' mill’s manganese bronze')).toEqual({
      name: 'Mill’s manganese bronze',
      metal: 'bronze',
      named: true,
      stated: { yield: 310 },
      faulty: [],
    });
    expect(materialFacts(own, 'bronze').stated).toEqual({});
    // Without a figure it stays, for it was asked for; the job is as before once it is taken out.
    const bare = setMaterialFigure(own, 'Mill’s manganese bronze', 'yield', undefined);
    expect(bare.materials).toHaveLength(1);
    expect(removeMaterial(bare, 'Mill’s manganese bronze')).toEqual(job);
    expect(removeMaterial(job, 'none such')).toBe(job);
  });

  it('is refused without a name, a second time, and past the most', () => {
    expect(addMaterial(job, '  ')).toEqual({ ok: false, why: 'give the metal a name' });
    expect(addMaterial(job, 'Bronze').ok).toBe(false);
    expect(addMaterial(added('Pot metal'), 'POT METAL').ok).toBe(false);
    let full = job;
    for (let i = 0; i < MOST.materials; i++) full = added(`metal ${i}`, full);
    expect(addMaterial(full, 'one more').ok).toBe(false);
  });
});

describe('figures of pressing in', () => {
  const facts = (of: Job) => pressFacts(of.features[0]!);

  it('are the usual ones, said so, until they are stated', () => {
    // Published notes on press fits: steel on steel oiled 0.05 to 0.10, dry 0.10 to 0.15; no loss where none is stated.
    expect(facts(job)).toEqual({
      loss: { mm: 0, from: 'default' },
      frictionLow: { value: 0.05, from: 'default' },
      frictionHigh: { value: 0.15, from: 'default' },
      wrong: [],
    });
    const stated = setFit(job, 'f1', 'roughnessLoss', { text: '0.0002', unit: 'in' });
    expect(facts(stated).loss.mm).toBeCloseTo(0.00508, 12);
  });

  it('are put in order, and one that cannot be counts for nothing', () => {
    const swapped = setFit(setFit(job, 'f1', 'frictionLow', '0.2'), 'f1', 'frictionHigh', '0.1');
    expect(facts(swapped).frictionLow.value).toBe(0.1);
    expect(facts(swapped).frictionHigh.value).toBe(0.2);
    expect(facts(setFit(job, 'f1', 'frictionHigh', '12')).frictionHigh.from).toBe('default');
    expect(facts(setFit(job, 'f1', 'frictionHigh', '0')).frictionHigh.from).toBe('default');
  });
});
