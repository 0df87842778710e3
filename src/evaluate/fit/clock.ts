/** The seconds that are left once a cold bushing and a warm boss touch, what helps, and what to do when it stops. */

import { after, ONE_PIECE } from '../../assembly/cooling.ts';
import { type Recovery, recoveryOf } from '../../assembly/recovery.ts';
import { BATHS } from '../../assembly/slip.ts';
import {
  type Closing,
  type Contact,
  closingOf,
  type Meeting,
  throughAir,
} from '../../assembly/transient.ts';
import type { Heat, HeatRow } from './heat.ts';
import type { Seated } from './seated.ts';

export interface Help {
  readonly what: 'hotter' | 'colder' | 'sooner';
  /** °C of the boss, or seconds of carrying, or the cold that it means. */
  readonly to: number | HeatRow['cold'];
  /** Seconds until the gap closes then, and how many more that is. */
  readonly seconds: number;
  readonly gain: number;
}

export interface Clock {
  readonly usual: Closing;
  /** With the contact and all that is uncertain of the room against, and for, the one who pushes. */
  readonly soonest: Closing;
  readonly latest: Closing;
  /** Seconds from touching to home, with what it takes to find the depth. */
  readonly needs: number;
  readonly helps: readonly Help[];
  /** In air the inside of one of them lags behind its skin: their temperatures at touching are told too simply. */
  readonly lags: boolean;
  /** W/(m² K) between the two when they touch: as counted, least, most. */
  readonly contact: { readonly usual: number; readonly least: number; readonly most: number };
  /** What a brief flame frees when all is cold; °C of that cold. */
  readonly recovery: Recovery;
  readonly cold: number;
}

/** How well a temperature is known by a stick or a probe, °C. Judgement. */
const BOSS_GIVE = 10;
const BUSHING_GIVE = 5;
/** A stated contact, and the film to the air, may be out by these factors. Judgement. */
const CONTACT_GIVE = 2;
const FILM_GIVE = 2.5;
/** What is tried as help. */
const HOTTER = 25;

/** Null where a size is missing, nothing is chosen, or there is no room to begin with. */
export function clockOf(heat: Heat, seated: Seated): Clock | null {
  const { chosen, facts, fault } = heat;
  const { inside, outside, boss } = seated;
  if (chosen === null || fault !== null || !(chosen.least > 0)) return null;
  if (!(inside > 0 && inside < outside && boss.outside > outside)) return null;
  const meeting = meetingOf(heat, seated);
  const usual = kept(meeting);
  const stated = facts.contact > 0 ? facts.contact : null;
  const give = roomGive(heat, seated);
  const edge = (way: 1 | -1, contact: Contact): Closing =>
    kept({
      ...meeting,
      bore: meeting.bore + way * give,
      film: meeting.film * FILM_GIVE ** -way,
      contact,
    });
  return {
    usual,
    soonest: edge(-1, stated === null ? 'resting' : stated * CONTACT_GIVE),
    latest: edge(1, stated === null ? 'centred' : stated / CONTACT_GIVE),
    needs: facts.slide.value + (facts.stop === 'eye' ? facts.find.value : 0),
    lags: Math.max(heat.cooling.boss.biot, heat.cooling.bushing.biot) > ONE_PIECE,
    helps: helpsOf(heat, meeting, usual.seconds),
    contact: contactOf(meeting, stated, chosen.least),
    ...recovered(heat, seated, meeting),
  };
}

/** Room, across, mm: what the wall and two thermometers leave open, each by itself (JCGM 100:2008, 5.1.2). */
function roomGive({ give, boss, bushing }: Heat, { outside }: Seated): number {
  return Math.hypot(
    give > 0 ? give : 0,
    outside * boss.expansion * BOSS_GIVE,
    outside * bushing.expansion * BUSHING_GIVE,
  );
}

function meetingOf({ chosen, facts, boss, bushing, press }: Heat, seated: Seated): Meeting {
  const { row, boss: warm, oval } = chosen!;
  return {
    inside: seated.inside,
    outside: seated.outside,
    // Where two warmer sides make it tight, by the most that they may.
    bore: seated.outside - press - oval.most,
    bossOutside: seated.boss.outside,
    bushing: { metal: bushing, celsius: row.entry },
    boss: { metal: boss, celsius: warm },
    air: facts.shop.value,
    film: facts.film.value,
    contact: facts.contact > 0 ? facts.contact : 'sliding',
  };
}

function contactOf(
  { boss, bushing }: Meeting,
  stated: number | null,
  room: number,
): Clock['contact'] {
  if (stated !== null) {
    return { usual: stated, least: stated / CONTACT_GIVE, most: stated * CONTACT_GIVE };
  }
  const through = (how: Exclude<Contact, number>) =>
    throughAir(room, (boss.celsius + bushing.celsius) / 2, how);
  return { usual: through('sliding'), least: through('centred'), most: through('resting') };
}

function helpsOf(heat: Heat, meeting: Meeting, now: number): Help[] {
  const { chosen, facts, limits, cooling, rows } = heat;
  const { row, off } = chosen!;
  const [air, seconds] = [facts.shop.value, facts.carry.value];
  const helps: Help[] = [];
  const offer = (what: Help['what'], to: Help['to'], of: Partial<Meeting>) => {
    const then = kept({ ...meeting, ...of }).seconds;
    helps.push({ what, to, seconds: then, gain: then - now });
  };
  const bossAt = (from: number, carry: number) => ({
    ...meeting.boss,
    celsius: Number.isNaN(cooling.boss.time) ? from : after(cooling.boss, from, air, carry),
  });
  if (off + HOTTER <= limits.boss) {
    offer('hotter', off + HOTTER, { boss: bossAt(off + HOTTER, seconds) });
  }
  const colder = rows.find((one) => one.cold !== 'own' && one.taken < row.taken - 1);
  if (colder) {
    offer('colder', colder.cold, { bushing: { ...meeting.bushing, celsius: colder.entry } });
  }
  if (seconds >= 2) {
    const bushing = Number.isNaN(cooling.bushing.time)
      ? row.taken
      : after(cooling.bushing, row.taken, air, seconds / 2);
    offer('sooner', seconds / 2, {
      boss: bossAt(off, seconds / 2),
      bushing: { ...meeting.bushing, celsius: bushing },
    });
  }
  return helps;
}

/** All as cold as the bath that the bushing comes from, or as dry ice where it comes from none. */
function recovered(
  { chosen, facts, limits, bushing, boss, press }: Heat,
  seated: Seated,
  meeting: Meeting,
): Pick<Clock, 'recovery' | 'cold'> {
  const { taken } = chosen!.row;
  const cold = taken < facts.shop.value ? taken : BATHS.dryIce;
  const recovery = recoveryOf({
    ...meeting,
    bore: seated.outside - press,
    bushing: { metal: bushing, celsius: cold },
    boss: { metal: boss, celsius: cold },
    contact: facts.contact > 0 ? facts.contact : throughAir(0, cold, 'centred'),
    flame: { power: facts.flame.value, seconds: facts.flameSeconds.value },
    length: seated.length > 0 ? seated.length : seated.seat.to - seated.seat.from,
    limit: limits.boss,
  });
  return { recovery, cold };
}

const MOST_KEPT = 60;
const remembered = new Map<string, Closing>();

/** What was worked out for the very same meeting is not worked out again. */
function kept(meeting: Meeting): Closing {
  const key = JSON.stringify(meeting);
  const found = remembered.get(key) ?? closingOf(meeting);
  remembered.delete(key);
  remembered.set(key, found);
  if (remembered.size > MOST_KEPT) remembered.delete(remembered.keys().next().value!);
  return found;
}
