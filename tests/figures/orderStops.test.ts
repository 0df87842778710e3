/** Constructed: what Heat, Press or the pin's size speaks against is told alike in the summary, and stops the order of work. */
import { describe, expect, it } from 'vitest';
import { type BushingFit, fitOfSurvey } from '../../src/evaluate/fit.ts';
import { evaluate, type Memory } from '../../src/evaluate.ts';
import { fitAnswers } from '../../src/figures/fitAnswers.ts';
import { orderSteps } from '../../src/figures/orderWords.ts';
import { slipWords } from '../../src/figures/slipWords.ts';
import type { HeatFigures } from '../../src/job/heatSchema.ts';
import type { Feature, Job } from '../../src/job/schema.ts';
import { demoJobs } from '../../src/practice/demos.ts';

const demo = demoJobs().find(({ file }) => file.startsWith('quarry-conveyor'))!.job;
const memory: Memory = new Map();
const celsius = (text: string) => ({ text, unit: 'C' as const });
const mm = (text: string) => ({ text, unit: 'mm' as const });

function told(change: (one: Feature) => Feature, spoil = (one: BushingFit) => one) {
  const job: Job = {
    ...demo,
    safety: {
      openAndClean: 'yes',
      sealsAndPlatingOut: 'yes',
      metal: 'plain-steel',
      carriesPeople: 'no',
    },
    features: [change(demo.features[0]!), ...demo.features.slice(1)],
  };
  const [bore] = evaluate(job, memory, 'quick').bores;
  const whole = fitOfSurvey(job, bore!, bore!.surveys[0]!, null)!;
  const found = { ...whole, bushings: whole.bushings.map(spoil) };
  const one = found.bushings[0]!;
  return {
    one,
    slip: slipWords(one, 'mm'),
    answer: (which: string) => fitAnswers(one, 'mm', true).find(({ asks }) => asks === which)!.says,
    steps: orderSteps(found, null, job, job.features[0]!),
  };
}
const heated = (heat: HeatFigures) =>
  told((one) => ({ ...one, decisions: { ...one.decisions, fit: { heat } } }));

/** The order ends with the one sentence, and nothing is warmed, chilled or pressed. */
function stopped({ steps }: ReturnType<typeof told>): string {
  expect(steps.at(-1)!.key).toBe('not-yet');
  for (const key of ['cold', 'slip', 'press', 'inside', 'pin']) {
    expect(steps.map((one) => one.key)).not.toContain(key);
  }
  return steps.at(-1)!.says;
}

describe('the order of the work is not begun', () => {
  it('where the boss is past its limit', () => {
    const hot = heated({ boss: celsius('290'), limit: celsius('150') });
    expect(hot.slip.chosen.join(' ')).toContain('Too hot');
    expect(stopped(hot)).toContain('may have 150 °C');
    expect(hot.answer('goes-in')).toContain('150 °C');
    expect(hot.answer('goes-in')).not.toContain('or it slips in');
    expect(hot.answer('seconds')).toContain('Not to be begun this way');
  });

  it('where the bushing comes out past its own', () => {
    const hot = heated({
      boss: celsius('290'),
      bushingLimit: celsius('60'),
    });
    expect(stopped(hot)).toContain('60 °C');
  });

  it('where there is no room', () => {
    expect(stopped(heated({ boss: celsius('25') }))).toContain('It does not go in like this');
  });

  it.each<[string, HeatFigures, string]>([
    ['a boss past 600 °C', { boss: celsius('700') }, 'past any fit'],
    [
      'one probe past 600 °C, the boss itself not typed',
      { probes: [{ clock: '3', at: celsius('900') }] },
      'past any fit',
    ],
    [
      'a probe colder than is counted',
      { probes: [{ clock: '3', at: celsius('-230') }] },
      'colder than −200 °C',
    ],
    ['a boss that melts', { boss: celsius('1500') }, 'would melt'],
    [
      'a bushing warmer than the boss',
      { cold: 'own', bushing: celsius('297'), boss: celsius('200') },
      'warmer than the boss',
    ],
  ])('with %s, and the summary says so', (_, heat, says) => {
    const all = heated(heat);
    expect(stopped(all)).toContain(says);
    expect(all.answer('goes-in')).toContain(says);
    expect(all.answer('seconds')).toContain(says);
    expect(all.slip.wrong.join(' ')).toContain(says);
    expect(JSON.stringify(all.slip)).not.toMatch(/NaN|– across/);
  });

  it('where the press fit is more than the metals bear', () => {
    const tight = told(
      (one) => one,
      (one) => {
        const cases = one.press.cases!;
        const past = { stress: 900, share: 1.4 };
        const greatest = { ...cases.greatest, bossLoad: past };
        return { ...one, press: { ...one.press, cases: { ...cases, greatest } } };
      },
    );
    expect(stopped(tight)).toContain('more than the boss can bear');
    expect(tight.answer('holds')).toMatch(/^Not safely: /);
    expect(tight.answer('holds')).toContain('the most that there can be');
  });

  it('where the pin is larger than the hole of the bushing', () => {
    const thick = told((one) => ({ ...one, pin: { diameters: [mm('79')] } }));
    expect(stopped(thick)).toContain('larger than the bushing’s bore');
    expect(thick.answer('turns')).toMatch(/^No: /);
  });
});

describe('the order of the work goes on', () => {
  it('pressed in cold: nothing is warmed or chilled, and nothing need be won', () => {
    const { steps } = heated({ cold: 'as-it-is', boss: celsius('20') });
    const keys = steps.map(({ key }) => key);
    expect(keys).toContain('press');
    expect(keys).not.toContain('slip');
  });
});

it('one probe does not tell that the boss is as warm all round', () => {
  const { slip } = heated({ probes: [{ clock: '3', at: celsius('180') }] });
  expect(slip.chosen.join(' ')).toContain('at one place only');
});

it('slipping in is not told as another way where no press force is known', () => {
  const { answer } = told(
    (one) => ({ ...one, decisions: { ...one.decisions, fit: { heat: { boss: celsius('200') } } } }),
    (one) => ({ ...one, press: { ...one.press, holds: null } }),
  );
  expect(answer('goes-in')).toMatch(/^It slips in with/);
});
