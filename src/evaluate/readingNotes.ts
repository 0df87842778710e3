/** What is to be said of the readings themselves: those that do not count, how well they repeat, and their gauges. */
import { needlesTurned } from '../bore/needleSign.ts';
import type { Posterior } from '../bore/posterior.ts';
import type { Remark, Sighting } from '../bore/types.ts';
import { clockText } from '../job/clock.ts';
import { zeroMoved } from '../job/comparator.ts';
import type { BoreFacts, SurveyFacts } from '../job/facts.ts';
import { readingSd } from '../job/gauges.ts';
import { repeatSpread } from '../job/repeats.ts';
import type { Feature, Job, Survey, Units } from '../job/schema.ts';
import { gaugeOf } from '../job/sizes.ts';
import { clockPeriod } from '../job/table.ts';
import { formatAcross, formatDepth, formatLength } from '../job/units.ts';
import type { Partner } from './partner.ts';
import { missing } from './wanted.ts';

export function readingNotes(
  job: Job,
  found: SurveyFacts,
  facts: BoreFacts,
  feature: Feature,
  survey: Survey,
  partner: Partner,
): Remark[] {
  const notes: Remark[] = found.unusable.map(({ row, why }) => ({
    kind: 'warning',
    text: `Reading ${row + 1} does not count: ${why}.`,
  }));
  if (facts.length.from === 'default' && found.readings.length > 0) {
    notes.push(
      missing('The length of the bore is not given; it is taken from the depths of the readings.'),
    );
  }
  if (feature.keepouts.length > facts.keepouts.length) {
    notes.push({
      kind: 'warning',
      text: 'A place to keep off (grease hole, chamfer or groove) is not on the map: its depths, or the length of the bore that face B needs, are missing.',
    });
  }
  if (feature.decisions.centre?.rule === 'partner' && partner.status === 'unknown') {
    notes.push({
      kind: 'warning',
      text: `The centre is to line up with the partner bore. ${partner.why} Until then the map lets the centre move.`,
    });
  }
  return [...notes, ...zeroNotes(job, survey), ...repeatNotes(found.readings, job.units)];
}

const warning = (text: string): Remark => ({ kind: 'warning', text });

/** Comparators that were put back on their zero at the end, and had moved by more than they repeat to. */
function zeroNotes(job: Job, survey: Survey): Remark[] {
  return (survey.zeroAfter ?? []).flatMap(({ gauge: id, shown }) => {
    const gauge = gaugeOf(job.gauges, id);
    if (gauge === undefined) return [];
    const moved = Math.abs(zeroMoved(gauge, shown));
    const repeats = readingSd(gauge).mm;
    if (!(moved > repeats)) return [];
    return [
      warning(
        `The zero of “${gauge.name}” moved by ${formatAcross(moved, job.units)} while these were read, more than it ` +
          `repeats to (${formatLength(repeats, job.units)}): any of its readings may be off by as much. Zero it again, ` +
          'and read the first and the last place once more.',
      ),
    ];
  });
}

/** Places where repeats lie farther apart than their gauge repeats to. */
function repeatNotes(readings: readonly Sighting[], units: Units): Remark[] {
  return repeated(readings).flatMap((group) => {
    const sd = Math.max(...group.map((one) => one.sd));
    const { count, range, limit } = repeatSpread(
      group.map(({ value }) => value),
      sd,
    );
    if (!(range > limit)) return [];
    const { theta, z } = group[0]!;
    return [
      warning(
        `At ${clockText(theta)}, ${formatDepth(z, units)} deep, ${count} tries lie ${formatLength(range, units)} apart; ` +
          `this gauge repeats within ${formatLength(limit, units)} in 19 sets of 20. Wipe, rock the gauge, and read there again.`,
      ),
    ];
  });
}

/** Readings of one instrument and set-up at one place, where there are several. */
function repeated(readings: readonly Sighting[]): Sighting[][] {
  const groups = new Map<string, Sighting[]>();
  for (const one of readings) {
    const period = clockPeriod(one.instrument);
    // A hair before a full period is its beginning.
    const seen = Math.round((one.theta / period) * 1e5) % 1e5;
    const key = [one.instrument, one.setup, seen, one.z.toFixed(3)].join(' ');
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [one]);
    else group.push(one);
  }
  return [...groups.values()].filter((group) => group.length > 1);
}

/** Swept needles that seem to turn the other way than was said. */
export function needleNotes(survey: Survey, p: Posterior, nominalRadius: number): Remark[] {
  return needlesTurned(p.design, p.smoothness, nominalRadius).map((place) => {
    const name = survey.setups[place]?.name;
    const of = name === undefined ? 'the swept needle' : `the needle of “${name}”`;
    const [said, other] =
      p.design.setups[place]!.sign === 1 ? ['larger', 'smaller'] : ['smaller', 'larger'];
    return warning(
      `What ${of} shows fits the other readings far better the other way round: its oval lies a quarter turn off theirs. ` +
        `Turning clockwise is said to mean a ${said} hole; does it mean a ${other} one?`,
    );
  });
}
