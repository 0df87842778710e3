/** The shop: its document read and refused, what it puts at hand, and the next reading sought among that alone. */
import { describe, expect, it } from 'vitest';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { gaugesAtHand } from '../../src/job/atHand.ts';
import { addGauge } from '../../src/job/edits.ts';
import { gaugeKind } from '../../src/job/gauges.ts';
import { offerPlace } from '../../src/job/offerPlace.ts';
import { openShop, saveShop } from '../../src/job/openShop.ts';
import type { Gauge, GaugeType, Job } from '../../src/job/schema.ts';
import type { Shop } from '../../src/job/shop.ts';
import { kindsAtHand, ownGauge, withKind, withShopGauge } from '../../src/job/shopGauges.ts';
import { demoJobs } from '../../src/practice/demos.ts';
import { smallJob } from './jobs.ts';

const mm = (text: string) => ({ text, unit: 'mm' as const });

function shopOf(...gauges: (GaugeType | Gauge)[]): Shop {
  const whole = gauges.map((one) => {
    if (typeof one !== 'string') return one;
    const { kind, name } = gaugeKind(one);
    return { id: one, kind, type: one, name };
  });
  return {
    format: 'roundhand-shop',
    version: 1,
    gauges: whole,
    tools: [],
    stock: [],
    rates: [],
    squeezes: [],
  };
}
const LONG: Gauge = {
  id: 'g1',
  kind: 'two-point',
  type: 'dial-bore',
  name: 'Long dial bore gauge',
  reach: mm('260'),
};

function hand(job: Job, shop: Shop | null) {
  const feature = job.features[0]!;
  return gaugesAtHand(job, feature, feature.surveys[0]!, 76.2, shop);
}
const names = (job: Job, shop: Shop | null) => hand(job, shop).map(({ name }) => name);

describe('at hand', () => {
  const telescoping = gaugeKind('telescoping').name;
  const indicator = gaugeKind('indicator').name;

  it('while nobody says: what the job has, and a dial indicator', () => {
    expect(names(smallJob(), null)).toEqual([telescoping, indicator]);
    const { gauges: _, ...unsaid } = shopOf();
    expect(names(smallJob(), unsaid)).toEqual([telescoping, indicator]);
  });

  it('what the shop has and nothing else, with its own figures; nothing where it has nothing', () => {
    expect(hand(smallJob(), shopOf(LONG))).toMatchObject([
      { gauge: 'shop:g1', name: LONG.name, from: 0, to: 260 },
    ]);
    expect(names(smallJob(), shopOf('telescoping'))).toEqual([telescoping]);
    expect(names(smallJob(), shopOf())).toEqual([]);
  });

  it('the job’s own gauge stands for the shop’s of its kind', () => {
    expect(hand(smallJob(), shopOf('telescoping'))[0]!.gauge).toBe(smallJob().gauges[0]!.id);
  });

  it('an outside micrometer gets into no bore, and a gauge that reads radii is no gauge at hand', () => {
    const shop = shopOf('outside-micrometer', 'centred-pin', 'points', 'caliper');
    expect(names(smallJob(), shop)).toEqual([gaugeKind('caliper').name]);
  });

  it('an indicator is a set-up to be made', () => {
    expect(hand(smallJob(), shopOf('indicator'))).toMatchObject([
      { instrument: 'sweep', setup: -1, fresh: { sign: 1 } },
    ]);
  });
});

describe('what is ticked', () => {
  it('begins with what was taken for granted, and is said from then on', () => {
    const job = smallJob();
    const shop = withKind(null, job, 'dial-bore', true);
    expect(kindsAtHand(shop, job)).toEqual(['telescoping', 'dial-bore', 'indicator']);
    const less = withKind(shop, job, 'indicator', false);
    expect(kindsAtHand(less, job)).toEqual(['telescoping', 'dial-bore']);
    // Another job’s own gauges add nothing once it is said.
    expect(kindsAtHand(less, addGauge(job, 'stick'))).toEqual(['telescoping', 'dial-bore']);
  });

  it('a gauge with figures of its own stays as it is when its kind is ticked again', () => {
    const shop = shopOf(LONG);
    expect(withKind(shop, smallJob(), 'dial-bore', true).gauges).toEqual([LONG]);
  });
});

describe('a gauge that a tick does not bring back', () => {
  it('is one with a name or figures of its own', () => {
    const generic = withKind(shopOf(), smallJob(), 'dial-bore', true);
    expect(ownGauge(generic, 'dial-bore')).toBeUndefined();
    expect(ownGauge(shopOf(LONG), 'dial-bore')).toEqual(LONG);
    expect(ownGauge(shopOf(LONG), 'caliper')).toBeUndefined();
    expect(ownGauge(null, 'dial-bore')).toBeUndefined();
  });
});

describe('a gauge of the shop that is to be read with', () => {
  it('comes into the job with its figures, under an id of its own, and into the table', () => {
    const job = smallJob();
    const ready = withShopGauge(job, shopOf(LONG), 'shop:g1');
    const taken = ready.job.gauges.at(-1)!;
    expect(taken).toEqual({ ...LONG, id: ready.gauge });
    expect(job.gauges.map(({ id }) => id)).not.toContain(ready.gauge);
    const place = { gauge: ready.gauge, theta: 0, z: 20 };
    const offered = offerPlace(ready.job, 'f1', 's1', place);
    if (!offered.ok) throw new Error(offered.why);
    expect(offered.job.features[0]!.surveys[0]!.plan.gauge).toBe(ready.gauge);
  });

  it('one of the job is left as it is', () => {
    const job = smallJob();
    expect(withShopGauge(job, shopOf(LONG), 'g1').job).toBe(job);
  });
});

describe('the next reading', () => {
  const { job } = demoJobs().find(({ file }) => file.startsWith('slipway-winch'))!;
  const next = (shop: Shop | null, memory: Memory = new Map()) =>
    evaluate(job, memory, 'settled', shop).bores[0]!.surveys[0]!.next;

  it('is sought with what is at hand, as deep as that gets, whatever was remembered', () => {
    const memory: Memory = new Map();
    const usual = next(null, memory);
    const caliper = next(shopOf('caliper'), memory);
    expect(caliper.readings.length).toBeGreaterThan(0);
    for (const one of caliper.readings) {
      expect(one.name).toBe(gaugeKind('caliper').name);
      expect(one.depths[0]).toBeLessThanOrEqual(16);
    }
    expect(caliper.setups).toEqual([]);
    expect(usual.readings.some(({ depths }) => depths[0]! > 16)).toBe(true);
    expect(next(null, memory)).toEqual(usual);
  });

  it('is none where nothing is at hand', () => {
    expect(next(shopOf())).toEqual({ readings: [], setups: [] });
  });
});

describe('the document', () => {
  it('comes back as it was saved', () => {
    const shop = shopOf(LONG, 'caliper');
    expect(openShop(saveShop(shop), 'shop.json')).toEqual({ ok: true, shop });
  });

  const whole = saveShop(shopOf(LONG));
  it.each([
    ['', 'shop.json: the file is empty; a shop document is wanted.'],
    [
      whole.slice(0, 60),
      'shop.json: the file stops in the middle of a shop document; it was cut off',
    ],
    ['[1]', 'shop.json: this is no shop document: it says no “format”; JSON that begins with'],
    ['null', 'shop.json: this is no shop document: it says no “format”'],
    ['{"format":"roundhand-job"}', 'its “format” is “roundhand-job”'],
    [whole.replace('"version": 1', '"version": 3'), 'of a newer Roundhand (version 3'],
    [whole.replace('"version": 1', '"version": "1"'), '“version” is “1”; it should be'],
    [
      whole.replace('dial-bore', 'laser'),
      'gauge “Long dial bore gauge”, “type” is “laser”; it should be one of',
    ],
    [whole.replace('260', 'far'), 'gauge “Long dial bore gauge”: reach: '],
    [
      whole.replace('"stock": []', '"stock": [{ "id": "k", "name": "Shim" }]'),
      'stock “Shim”, “thickness” is missing',
    ],
  ])('is refused in one sentence: %j', (text, why) => {
    const opened = openShop(text, 'shop.json');
    if (opened.ok) throw new Error('taken');
    expect(opened.why).toContain(why);
    expect(opened.why).toMatch(/^shop\.json: [^\n]*\.$/);
  });
});
