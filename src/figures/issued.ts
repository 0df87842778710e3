/** A pass as it goes to the bench, frozen; and what is said of one that went. */
import type { Pass, PassPlan } from '../bore/passTypes.ts';
import type { Target, WearSurface } from '../bore/types.ts';
import type { Passes } from '../evaluate/passes.ts';
import type { Issued, Units } from '../job/schema.ts';
import { passConditions, passTitle, passZone } from './passWords.ts';

interface Given {
  readonly pass: Pass;
  readonly tool: PassPlan['tool'];
  readonly number: number;
  /** The survey that it was planned from. */
  readonly survey: { readonly id: string };
  readonly surface: WearSurface;
  readonly target: Target;
  readonly length: number;
  readonly units: Units;
  /** `2026-11-28`. */
  readonly when: string;
}

/** Kept to 0.00001 mm, far below what any hand or gauge tells, so that a saved job stays small. */
const kept = (mm: number) => (mm > 0 ? Math.round(mm * 1e5) / 1e5 : 0);

export function issuedOf({
  pass,
  tool,
  number,
  survey,
  surface: { grid },
  target,
  length,
  units,
  when,
}: Given): Omit<Issued, 'id'> {
  const columns = grid.theta.length;
  const zones = pass.zones.map((zone) => passZone(zone, length, units));
  return {
    when,
    survey: survey.id,
    title: passTitle(pass, number, units),
    targetDiameter: target.diameter,
    theta: [...grid.theta],
    z: [...grid.z],
    removal: Array.from(grid.z, (_, row) =>
      Array.from(pass.removal.subarray(row * columns, (row + 1) * columns), kept),
    ),
    words: [...zones.map(({ where, what }) => `${where}: ${what}`), ...passConditions(pass, units)],
    tool: { radius: tool.radius, width: tool.width, bite: tool.bite },
  };
}

const CHANGED =
  'The plan has changed since, and its next pass is another one now. What was given stands until another is given in its place: the next readings are held against it.';

/** What went to the bench from this survey, and whether it is still what is planned; none: nothing did. */
export function issuedWords({ issued }: Passes): string[] {
  if (issued === null) return [];
  return [
    `Given to the bench on ${issued.when}: ${issued.title}.`,
    ...(issued.same ? [] : [CHANGED]),
  ];
}
