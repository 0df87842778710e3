/** What is laid over the drawing: what was switched by hand, else what the section that is read speaks of. */
import type { Overlay, Session } from '../../store/session.ts';

export type Shown = Readonly<Record<Overlay, boolean>>;

export const OVERLAYS: readonly { readonly overlay: Overlay; readonly name: string }[] = [
  { overlay: 'readings', name: 'readings, as pins' },
  { overlay: 'target', name: 'the size wanted, as an outline' },
  { overlay: 'metal-off', name: 'metal to take off' },
  { overlay: 'first-pass', name: 'what the pass looked at takes' },
  { overlay: 'low', name: 'low places, short of metal' },
  { overlay: 'zones', name: 'figures of the high and low places' },
  { overlay: 'circles', name: 'three circles: plug, average, clean-up' },
  { overlay: 'bushing', name: 'bushing and pin' },
  { overlay: 'pressure', name: 'where the bushing presses' },
];

const BY_SECTION: Readonly<Record<Session['section'], readonly Overlay[]>> = {
  measure: ['readings'],
  read: ['readings', 'zones'],
  plan: ['target', 'metal-off', 'zones'],
  fit: ['bushing', 'low', 'pressure'],
  show: [],
};

const BY_STORY: Readonly<Record<NonNullable<Session['story']>, readonly Overlay[]>> = {
  new: ['bushing'],
  worn: [],
  work: ['metal-off'],
  done: ['bushing'],
};

/** What can be shown of this bore at all. */
export type Possible = Readonly<Record<Overlay, boolean>>;

type Asked = Pick<Session, 'overlays' | 'section' | 'story'>;

export function shownOverlays({ overlays, section, story }: Asked, possible: Possible): Shown {
  const told = section === 'show' && story !== null;
  const usual = new Set<Overlay>(told ? BY_STORY[story] : BY_SECTION[section]);
  // What is low is where it does not press: one of the two is enough to look at.
  if (usual.has('pressure') && possible.pressure) usual.delete('low');
  const entries = OVERLAYS.map(({ overlay }) => {
    // A step of the story shows what it is about, whatever was switched before.
    const wanted = told ? usual.has(overlay) : (overlays[overlay] ?? usual.has(overlay));
    return [overlay, wanted && possible[overlay]];
  });
  return Object.fromEntries(entries) as Record<Overlay, boolean>;
}
