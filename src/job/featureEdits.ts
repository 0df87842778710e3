/** Edits of a measured feature: its sizes, bushings, pin, places to leave alone, and the repairer's decisions. */
import {
  changeFeature,
  done,
  idSource,
  mapById,
  refused,
  replaced,
  type Tried,
  textOrNone,
  typedKept,
  typedOrNone,
  withKey,
  withKeys,
  withoutId,
} from './change.ts';
import {
  type Bushing,
  type Decisions,
  type Face,
  type Feature,
  type Issued,
  type Job,
  type Keepout,
  MOST,
  type Typed,
  type WayFigure,
  type WayShare,
} from './schema.ts';

const KIND_NAMES: Readonly<Record<Feature['kind'], string>> = {
  bore: 'Bore',
  pin: 'Pin',
  'bushing-inside': 'Old bushing, inside',
  'bushing-outside': 'Old bushing, outside',
};

/** A feature without sizes or surveys, at the end of the list; its bushing is added with `addBushing`. */
export function addFeature(job: Job, kind: Feature['kind'], name?: string): Tried {
  if (job.features.length >= MOST.features) {
    return refused(`a job holds ${MOST.features} bores and pins at most: start another job`);
  }
  const count = job.features.filter((one) => one.kind === kind).length + 1;
  const usual = count === 1 ? KIND_NAMES[kind] : `${KIND_NAMES[kind]} ${count}`;
  const feature: Feature = {
    id: idSource(job)('f'),
    kind,
    name: (name ?? usual).slice(0, MOST.name),
    bushings: [],
    wanted: {},
    keepouts: [],
    surveys: [],
    decisions: {},
    issued: [],
  };
  return done({ ...job, features: [...job.features, feature] });
}

export function removeFeature(job: Job, featureId: string): Tried {
  const features = withoutId(job.features, featureId);
  if (features.length === 0) return refused('a job needs at least one bore or pin');
  return done(replaced(job, 'features', features));
}

export function renameFeature(job: Job, featureId: string, name: string): Job {
  return changeFeature(job, featureId, (one) => withKey(one, 'name', name.slice(0, MOST.name)));
}

export type Dimension = 'nominal' | 'length' | 'bossOutside' | 'pressFit' | 'clearance' | 'target';

/** A size of the feature; undefined or empty takes it away, so that the default stands again. */
export function setDimension(
  job: Job,
  featureId: string,
  dimension: Dimension,
  typed: Typed | undefined,
): Job {
  const kept = typedOrNone(typed);
  return changeFeature(job, featureId, (one) => {
    if (dimension === 'bossOutside') return setBoss(one, 'outside', kept);
    if (dimension === 'pressFit' || dimension === 'clearance') {
      return withKey(one, 'wanted', withKey(one.wanted, dimension, kept));
    }
    if (dimension === 'target') {
      return withKey(one, 'decisions', withKey(one.decisions, 'target', kept));
    }
    return withKey(one, dimension, kept);
  });
}

/** Wanted press fit or running clearance, across; undefined or empty: the default of the trade. */
export function setWanted(
  job: Job,
  featureId: string,
  which: 'pressFit' | 'clearance',
  typed: Typed | undefined,
): Job {
  return setDimension(job, featureId, which, typed);
}

export function setBossMaterial(job: Job, featureId: string, material: string): Job {
  const kept = textOrNone(material, MOST.name);
  return changeFeature(job, featureId, (one) => setBoss(one, 'material', kept));
}

type Boss = NonNullable<Feature['boss']>;

function setBoss<K extends keyof Boss>(one: Feature, key: K, value: Boss[K] | undefined): Feature {
  const boss = withKey<Boss, K>(one.boss ?? {}, key, value);
  return withKey(one, 'boss', Object.keys(boss).length === 0 ? undefined : boss);
}

/** One measured place of the pin; an empty text closes the gap, a place past the end is added at the end. */
export function setPinDiameter(
  job: Job,
  featureId: string,
  place: number,
  typed: Typed | undefined,
): Job {
  return changeFeature(job, featureId, (one) => {
    const diameters = setPlaceOf(one.pin?.diameters ?? [], place, typed, MOST.pinPlaces);
    return withKey(one, 'pin', diameters.length === 0 ? undefined : { diameters });
  });
}

function setPlaceOf(list: Typed[], place: number, typed: Typed | undefined, most: number): Typed[] {
  const kept = typedOrNone(typed);
  if (kept === undefined) return list.filter((_, index) => index !== place);
  if (place < list.length) return list.with(place, kept);
  return list.length < most ? [...list, kept] : list;
}

/** Clock position towards which the load pulls, as typed; empty takes it away. */
export function setLoad(job: Job, featureId: string, clock: string): Job {
  return changeFeature(job, featureId, (one) =>
    withKey(one, 'load', textOrNone(clock, MOST.clock)),
  );
}

export function setFeatureNote(job: Job, featureId: string, note: string): Job {
  return changeFeature(job, featureId, (one) => withKey(one, 'note', textOrNone(note, MOST.note)));
}

type Place = NonNullable<Feature['place']>;

/** Where the feature sits on the pin's axis; an empty station takes the whole place away. */
export function setPlace(
  job: Job,
  featureId: string,
  key: keyof Place,
  typed: Typed | undefined,
): Job {
  const kept = typedOrNone(typed);
  return changeFeature(job, featureId, (one) => {
    if (key === 'station') {
      return withKey(one, 'place', kept && { ...one.place, station: kept });
    }
    const place: Place = one.place ?? { station: { text: '0', unit: job.units } };
    return withKey(one, 'place', withKey(place, key, kept));
  });
}

/** A bushing from the given face, without sizes. */
export function addBushing(job: Job, featureId: string, face: Face = 'A', name?: string): Tried {
  const feature = job.features.find((one) => one.id === featureId);
  if (feature === undefined) return done(job);
  if (feature.bushings.length >= MOST.bushings) {
    return refused(`“${feature.name}” has its ${MOST.bushings} bushings already`);
  }
  const bushing: Bushing = {
    id: idSource(job)('b'),
    name: (name ?? 'Bushing').slice(0, MOST.name),
    seat: { face },
    outside: [],
  };
  return done(
    changeFeature(job, featureId, (one) => ({ ...one, bushings: [...one.bushings, bushing] })),
  );
}

export function removeBushing(job: Job, featureId: string, bushingId: string): Job {
  return changeFeature(job, featureId, (one) =>
    replaced(one, 'bushings', withoutId(one.bushings, bushingId)),
  );
}

function changeBushing(
  job: Job,
  featureId: string,
  bushingId: string,
  change: (one: Bushing) => Bushing,
): Job {
  return changeFeature(job, featureId, (one) =>
    replaced(one, 'bushings', mapById(one.bushings, bushingId, change)),
  );
}

export type BushingSize = 'inside' | 'length' | 'leadChamfer' | 'from' | 'to' | 'standOut';

/** A size of the bushing or of its seat; undefined or empty takes it away. */
export function setBushing(
  job: Job,
  featureId: string,
  bushingId: string,
  which: BushingSize,
  typed: Typed | undefined,
): Job {
  const kept = typedOrNone(typed);
  return changeBushing(job, featureId, bushingId, (one) =>
    which === 'from' || which === 'to' || which === 'standOut'
      ? withKey(one, 'seat', withKey(one.seat, which, kept))
      : withKey(one, which, kept),
  );
}

/** One measured place of the outside diameter; see `setPinDiameter` for gaps and ends. */
export function setBushingOutside(
  job: Job,
  featureId: string,
  bushingId: string,
  place: number,
  typed: Typed | undefined,
): Job {
  return changeBushing(job, featureId, bushingId, (one) =>
    withKey(one, 'outside', setPlaceOf(one.outside, place, typed, MOST.outside)),
  );
}

export function setBushingFace(job: Job, featureId: string, bushingId: string, face: Face): Job {
  return changeBushing(job, featureId, bushingId, (one) =>
    withKey(one, 'seat', withKey(one.seat, 'face', face)),
  );
}

/** Name or material of a bushing; an empty material takes it away. */
export function setBushingText(
  job: Job,
  featureId: string,
  bushingId: string,
  which: 'name' | 'material',
  text: string,
): Job {
  return changeBushing(job, featureId, bushingId, (one) =>
    which === 'name'
      ? withKey(one, 'name', text.slice(0, MOST.name))
      : withKey(one, 'material', textOrNone(text, MOST.name)),
  );
}

/** A place not to measure or grind. */
export function addKeepout(job: Job, featureId: string, keepout: Omit<Keepout, 'id'>): Job {
  const id = idSource(job)('k');
  return changeFeature(job, featureId, (one) => ({
    ...one,
    keepouts: [...one.keepouts, { ...keepout, id }],
  }));
}

/** Changes a place not to measure or grind; an undefined or empty optional entry goes. */
export function setKeepout(
  job: Job,
  featureId: string,
  keepoutId: string,
  change: { readonly [K in keyof Omit<Keepout, 'id'>]?: Keepout[K] | undefined },
): Job {
  const { kind, face, from, to } = change;
  return changeFeature(job, featureId, (one) =>
    replaced(
      one,
      'keepouts',
      mapById(one.keepouts, keepoutId, (keepout) => {
        let next = keepout;
        if (kind !== undefined) next = withKey(next, 'kind', kind);
        if (face !== undefined) next = withKey(next, 'face', face);
        if (from !== undefined) next = withKey(next, 'from', typedKept(from));
        if (to !== undefined) next = withKey(next, 'to', typedKept(to));
        if (Object.hasOwn(change, 'name')) {
          next = withKey(next, 'name', textOrNone(change.name, MOST.name));
        }
        if (Object.hasOwn(change, 'clock')) {
          next = withKey(next, 'clock', textOrNone(change.clock, MOST.clock));
        }
        if (Object.hasOwn(change, 'guarded')) next = withKey(next, 'guarded', change.guarded);
        if (Object.hasOwn(change, 'width'))
          next = withKey(next, 'width', typedOrNone(change.width));
        return next;
      }),
    ),
  );
}

export function removeKeepout(job: Job, featureId: string, keepoutId: string): Job {
  return changeFeature(job, featureId, (one) =>
    replaced(one, 'keepouts', withoutId(one.keepouts, keepoutId)),
  );
}

/** Way of mending, centre, target, tool; an undefined entry takes the decision back. */
export function setDecision(
  job: Job,
  featureId: string,
  change: { readonly [K in keyof Decisions]?: Decisions[K] | undefined },
): Job {
  return changeFeature(job, featureId, (one) =>
    withKey(one, 'decisions', withKeys(one.decisions, change)),
  );
}

/**
 * Chooses a way of mending, and its size with it: one step to take back.
 *
 * @param own target of a way that makes the bore to a size of its own; null: it has none, and a size that another such way
 *   brought goes with that one
 */
export function chooseWay(
  job: Job,
  featureId: string,
  way: NonNullable<Decisions['way']>,
  own: Typed | null,
): Job {
  return changeFeature(job, featureId, (one) => {
    const before = one.decisions.way;
    const leaves = before !== undefined && OWN_SIZE.includes(before) && before !== way;
    const sized = own !== null ? { target: own } : leaves ? { target: undefined } : {};
    return withKey(one, 'decisions', withKeys(one.decisions, { way, ...sized }));
  });
}

/** Ways that make the bore to a size of their own, which then is the target. */
export const OWN_SIZE: readonly NonNullable<Decisions['way']>[] = ['shim', 'oversize', 'sleeve'];

/** A figure of the ways of mending; undefined or empty is the starting value again. */
export function setWayFigure(
  job: Job,
  featureId: string,
  key: WayFigure,
  typed: Typed | undefined,
): Job {
  return changeFeature(job, featureId, (one) => {
    const figures = withKey(one.decisions.wayFigures ?? {}, key, typedOrNone(typed));
    return withKey(one, 'decisions', withKey(one.decisions, 'wayFigures', filled(figures)));
  });
}

/** A share of the ways of mending, in per cent; an empty text is the starting value again. */
export function setWayShare(job: Job, featureId: string, key: WayShare, text: string): Job {
  return changeFeature(job, featureId, (one) => {
    const kept = textOrNone(text, MOST.clock);
    const shares = withKey(one.decisions.wayShares ?? {}, key, kept);
    return withKey(one, 'decisions', withKey(one.decisions, 'wayShares', filled(shares)));
  });
}

/** None where nothing is in it. */
function filled<T extends object>(of: T): T | undefined {
  return Object.keys(of).length > 0 ? of : undefined;
}

/** Freezes a pass as it goes to the bench, in place of one that went from the same survey before: the last one is ground. */
export function issuePass(job: Job, featureId: string, issued: Omit<Issued, 'id'>): Job {
  const id = idSource(job)('i');
  return changeFeature(job, featureId, (one) => ({
    ...one,
    issued: [...one.issued.filter(({ survey }) => survey !== issued.survey), { ...issued, id }],
  }));
}
