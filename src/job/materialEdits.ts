/** Edits of the job's metals: own entries, and figures that are not the usual ones. */
import { done, refused, type Tried, withKey } from './change.ts';
import { sameName } from './materialFacts.ts';
import type { MaterialFigure, OwnMaterial } from './materialSchema.ts';
import { type Job, MOST } from './schema.ts';
import { METAL_NAMES } from './temperature.ts';

/** A metal of one's own, by name; its figures are those of the usual metal that the name tells until they are stated. */
export function addMaterial(job: Job, name: string): Tried {
  const kept = name.trim().slice(0, MOST.name);
  if (kept === '') return refused('give the metal a name');
  const known = [...METAL_NAMES, ...(job.materials ?? []).map((one) => one.name)];
  if (known.some((one) => sameName(one, kept))) return refused(`“${kept}” stands in the list`);
  const entries = job.materials ?? [];
  if (entries.length >= MOST.materials) return refused(`${MOST.materials} metals are the most`);
  return done(setEntries(job, [...entries, { name: kept }]));
}

/** Takes an own entry out, or makes a usual metal's figures the usual ones again. */
export function removeMaterial(job: Job, name: string): Job {
  const entries = job.materials ?? [];
  const rest = entries.filter((one) => !sameName(one.name, name));
  return rest.length === entries.length ? job : setEntries(job, rest);
}

/** One figure of a metal, as typed; undefined makes it the usual one again. */
export function setMaterialFigure(
  job: Job,
  name: string,
  figure: MaterialFigure,
  text: string | undefined,
): Job {
  const entries = job.materials ?? [];
  const at = entries.findIndex((one) => sameName(one.name, name));
  const before: OwnMaterial = entries[at] ?? { name };
  const after = withKey(before, figure, text?.slice(0, 20));
  if (after === before) return job;
  const usual = METAL_NAMES.some((one) => sameName(one, name));
  if (usual && Object.keys(after).length === 1) return removeMaterial(job, name);
  return setEntries(
    job,
    at < 0 ? [...entries, after].slice(0, MOST.materials) : entries.with(at, after),
  );
}

function setEntries(job: Job, entries: OwnMaterial[]): Job {
  return withKey(job, 'materials', entries.length === 0 ? undefined : entries);
}
