/** Edits of what the readings of one set-up share, and of which set-up the next readings belong to. */
import {
  changeSurvey,
  done,
  findSurvey,
  idSource,
  mapById,
  refused,
  replaced,
  type Tried,
  typedOrNone,
  withKey,
  withoutId,
} from './change.ts';
import { type Job, MOST, type Setup, type Typed } from './schema.ts';
import { setupInHand, sharesSetup } from './setups.ts';
import { gaugeOf } from './sizes.ts';

/** A set-up of a swept indicator or of wall readings on one boss; the next readings belong to it. */
export function addSetup(
  job: Job,
  featureId: string,
  surveyId: string,
  setup: Omit<Setup, 'id'>,
): Job {
  const id = idSource(job)('u');
  return changeSurvey(job, featureId, surveyId, (one) => ({
    ...one,
    plan: withKey(one.plan, 'setup', id),
    setups: [...one.setups, { ...setup, id }],
  }));
}

/** From now on readings with the set-up's gauge belong to it, and the table shows its readings. */
export function chooseSetup(job: Job, featureId: string, surveyId: string, setupId: string): Job {
  return changeSurvey(job, featureId, surveyId, (one) =>
    one.setups.some(({ id }) => id === setupId)
      ? withKey(one, 'plan', withKey(one.plan, 'setup', setupId))
      : one,
  );
}

/**
 * The gauge in hand is set up anew: readings from now on share another spindle or boss. Readings that named no set-up
 * get one of their own first, so that they stay apart. Nothing where the gauge has no set-ups.
 */
export function newSetup(job: Job, featureId: string, surveyId: string): Job {
  const survey = findSurvey(job, featureId, surveyId);
  if (survey === undefined) return job;
  const { gauge } = survey.plan;
  const unnamed = survey.readings.some((one) => one.gauge === gauge && one.setup === undefined);
  const named =
    unnamed && setupInHand(survey, gauge) === undefined ? withSetup(job, featureId, surveyId) : job;
  return addUsual(named, featureId, surveyId);
}

/** The survey with a set-up for the gauge in hand: the one in hand, or a first one that takes its readings in. */
export function withSetup(job: Job, featureId: string, surveyId: string): Job {
  const survey = findSurvey(job, featureId, surveyId);
  if (survey === undefined) return job;
  const { gauge } = survey.plan;
  if (setupInHand(survey, gauge) !== undefined) return job;
  const added = addUsual(job, featureId, surveyId);
  if (added === job) return job;
  return changeSurvey(added, featureId, surveyId, (one) => {
    const { setup } = one.plan;
    const readings = one.readings.map((reading) =>
      reading.gauge === gauge && reading.setup === undefined
        ? withKey(reading, 'setup', setup)
        : reading,
    );
    return { ...one, readings };
  });
}

function addUsual(job: Job, featureId: string, surveyId: string): Job {
  const survey = findSurvey(job, featureId, surveyId);
  if (survey === undefined) return job;
  const { gauge, face } = survey.plan;
  const kind = gaugeOf(job.gauges, gauge)?.kind;
  if (!sharesSetup(kind)) return job;
  const word = kind === 'wall' ? 'Boss' : 'Spindle';
  const taken = new Set(survey.setups.map(({ name }) => name));
  let number = 1;
  while (taken.has(`${word} ${number}`)) number++;
  return addSetup(job, featureId, surveyId, { gauge, name: `${word} ${number}`, face });
}

/** Changes a set-up; an undefined or empty figure is the default again. */
export function setSetup(
  job: Job,
  featureId: string,
  surveyId: string,
  setupId: string,
  change: { readonly [K in keyof Omit<Setup, 'id'>]?: Setup[K] | undefined },
): Job {
  const figures = ['lean', 'offset', 'roundness'] as const;
  const flags = ['resetEachDepth', 'notKnown'] as const;
  return changeSurvey(job, featureId, surveyId, (survey) =>
    replaced(
      survey,
      'setups',
      mapById(survey.setups, setupId, (setup) => {
        let next = setup;
        if (change.name !== undefined)
          next = withKey(next, 'name', change.name.slice(0, MOST.name));
        if (change.face !== undefined) next = withKey(next, 'face', change.face);
        if (change.gauge !== undefined) next = withKey(next, 'gauge', change.gauge);
        for (const key of figures) {
          if (Object.hasOwn(change, key)) next = withKey(next, key, typedOrNone(change[key]));
        }
        for (const key of flags) {
          if (Object.hasOwn(change, key)) next = withKey(next, key, change[key] || undefined);
        }
        return next;
      }),
    ),
  );
}

/** Only a set-up without readings can go. */
export function removeSetup(job: Job, featureId: string, surveyId: string, setupId: string): Tried {
  const survey = findSurvey(job, featureId, surveyId);
  const setup = survey?.setups.find((one) => one.id === setupId);
  if (survey === undefined || setup === undefined) return done(job);
  if (survey.readings.some((one) => one.setup === setupId)) {
    return refused(`set-up “${setup.name}” holds readings: remove those first`);
  }
  return done(
    changeSurvey(job, featureId, surveyId, (one) => ({
      ...one,
      plan: one.plan.setup === setupId ? withKey(one.plan, 'setup', undefined) : one.plan,
      setups: withoutId(one.setups, setupId),
    })),
  );
}

/** What a comparator showed at the end, back on the size at which it was zeroed; undefined or empty: not checked. */
export function setZeroAfter(
  job: Job,
  featureId: string,
  surveyId: string,
  gaugeId: string,
  shown: Typed | undefined,
): Job {
  const kept = typedOrNone(shown);
  return changeSurvey(job, featureId, surveyId, (one) => {
    const others = (one.zeroAfter ?? []).filter(({ gauge }) => gauge !== gaugeId);
    const all = kept === undefined ? others : [...others, { gauge: gaugeId, shown: kept }];
    return withKey(one, 'zeroAfter', all.length === 0 ? undefined : all);
  });
}
