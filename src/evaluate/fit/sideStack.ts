/**
 * The room beside one boss between two ears, now and after the work: everything that stands in it, part by part, from what
 * was typed, from worn faces with their washers, and from how far the bushings stand out. mm along the pin.
 */
import { type Rim, rimOf } from '../../assembly/rim.ts';
import { type FaceShims, faceShims, type Range, sideGap } from '../../assembly/sideGap.ts';
import { boreFacts } from '../../job/facts.ts';
import { mendingFacts } from '../../job/mendingFacts.ts';
import type { Face, Feature, Job } from '../../job/schema.ts';
import type { Shop } from '../../job/shop.ts';
import { type SideGapFacts, sideGapFacts } from '../../job/sideGapFacts.ts';
import { lengthMm } from '../../job/units.ts';

/** One layer beside a face of the boss, from the boss outward. */
export interface Layer {
  readonly kind: 'dressed' | 'washers' | 'bushing' | 'part' | 'ear-washers' | 'ear-bushing';
  /** Of a loose part its name, of an ear the bore's; '' else. */
  readonly name: string;
  readonly face: Face;
  /** Negative where the face is dressed back. */
  readonly thickness: number;
  readonly when: 'now' | 'after' | 'both';
}

export interface SideStack {
  readonly facts: SideGapFacts;
  readonly layers: readonly Layer[];
  /** The whole gap, both sides together; NaN not known. */
  readonly now: Range;
  readonly after: Range;
  /** Null: none is needed, or none goes in. */
  readonly shims: FaceShims | null;
  /** The bores whose faces look at this boss, by their stations; '' none is known. */
  readonly ears: Readonly<Record<Face, string>>;
}

export function sideStackOf(job: Job, feature: Feature, shop: Shop | null): SideStack {
  const facts = sideGapFacts(feature, job.units);
  const { washers } = mendingFacts(job, feature, shop);
  const ears = earsOf(job, feature);
  const layers = (['A', 'B'] as const).flatMap((face) => [
    ...facesOf(job, feature, face, { facts, washers }),
    ...facts.parts
      .filter((part) => part.face === face)
      .map(({ name, thickness, when }): Layer => ({ kind: 'part', name, face, thickness, when })),
    ...earLayers(job, ears[face], face, washers),
  ]);
  const { between, width, least, most } = facts;
  const at = (when: 'now' | 'after') =>
    sideGap({
      between,
      width,
      parts: layers.flatMap((one) =>
        one.when === 'both' || one.when === when ? [one.thickness] : [],
      ),
    });
  const after = at('after');
  const shims = faceShims(after, { least: least.mm, most: most.mm }, washers);
  const names = { A: ears.A?.name ?? '', B: ears.B?.name ?? '' };
  return { facts, layers, now: at('now'), after, shims, ears: names };
}

interface Given {
  readonly facts: SideGapFacts;
  readonly washers: readonly number[];
}

/** A face dressed back, its washers, and what the bushing stands out beyond them. */
function facesOf(job: Job, feature: Feature, face: Face, { facts, washers }: Given): Layer[] {
  const dressed = facts.faces === 'dressed';
  const { rim, standsOut } = rimAt(job, feature, face, washers);
  const made = rim && (dressed ? rim.dressed : rim.asItIs);
  const layer = (kind: Layer['kind'], thickness: number): Layer[] =>
    thickness !== 0 ? [{ kind, name: '', face, thickness, when: 'after' }] : [];
  return [
    ...(rim && dressed ? layer('dressed', rim.least.below - rim.greatest.below) : []),
    ...layer('washers', made?.stack?.thickness ?? 0),
    ...layer('bushing', Math.max(0, made?.standsOut ?? standsOut)),
  ];
}

/** Beyond the face of this boss: washers on the ear's face, and what its bushing stands out. */
function earLayers(job: Job, ear: Feature | null, face: Face, washers: readonly number[]): Layer[] {
  if (ear === null) return [];
  const { rim, standsOut } = rimAt(job, ear, face === 'A' ? 'B' : 'A', washers);
  const layer = (kind: Layer['kind'], thickness: number): Layer[] =>
    thickness > 0 ? [{ kind, name: ear.name, face, thickness, when: 'after' }] : [];
  return [
    ...layer('ear-washers', rim?.asItIs.stack?.thickness ?? 0),
    ...layer('ear-bushing', Math.max(0, rim?.asItIs.standsOut ?? standsOut)),
  ];
}

function rimAt(job: Job, feature: Feature, face: Face, washers: readonly number[]) {
  const { rims } = mendingFacts(job, feature, null);
  const length = boreFacts(job, feature).length.mm;
  const standsOut = Math.max(
    0,
    ...feature.bushings.map((bushing) => standOutAt(bushing, face, length)),
  );
  const readings = rims.find((one) => one.face === face)?.readings ?? [];
  const rim: Rim | null = rimOf(readings, washers, standsOut);
  return { rim, standsOut };
}

/** How far a bushing stands out of the face as it was new; a long one may do so at its far end. */
function standOutAt(bushing: Feature['bushings'][number], face: Face, length: number): number {
  const said = lengthMm(bushing.seat.standOut);
  if (bushing.seat.face === face) return Number.isNaN(said) ? 0 : said;
  const or0 = (mm: number) => (Number.isNaN(mm) ? 0 : mm);
  const far = or0(lengthMm(bushing.seat.from)) - or0(said) + lengthMm(bushing.length) - length;
  return far > 0 ? far : 0;
}

/** The bores next to this one along the pin, as their stations say. */
function earsOf(job: Job, feature: Feature): Readonly<Record<Face, Feature | null>> {
  const station = (one: Feature) => lengthMm(one.place?.station);
  const own = station(feature);
  const others = job.features.filter(({ id, kind }) => kind === 'bore' && id !== feature.id);
  const nearest = (side: 1 | -1) =>
    others
      .filter((one) => side * (station(one) - own) > 0)
      .sort((a, b) => side * (station(a) - station(b)))[0] ?? null;
  return { A: nearest(-1), B: nearest(1) };
}
