/** The metal of a part: as the job names it, with the usual figures where the job states none. */
import type { Material } from '../../assembly/material.ts';
import { metalNamed } from '../../assembly/materials.ts';
import { type MaterialFacts, materialFacts } from '../../job/materialFacts.ts';
import type { MaterialFigure } from '../../job/materialSchema.ts';
import type { Job } from '../../job/schema.ts';
import { METAL_NAMES } from '../../job/temperature.ts';

export interface MetalUsed {
  readonly material: Material;
  /** Breaks before it yields: `material.yield` is then its tensile strength. */
  readonly brittle: boolean;
  /** The usual metal whose figures stand where the job states none. */
  readonly metal: string;
  /** `said` where the text tells it, `safety` where only the questions about heat do, `usual` where nothing does. */
  readonly from: 'said' | 'safety' | 'usual';
  readonly stated: readonly MaterialFigure[];
  readonly faulty: readonly MaterialFigure[];
  /** Of each figure; one that the job states has none. */
  readonly sources: Readonly<Record<MaterialFigure, string>>;
}

/** @param text of boss or bushing as it stands in the job */
export function metalUsed(job: Job, text: string | undefined, of: 'boss' | 'bushing'): MetalUsed {
  const facts = materialFacts(job, text);
  if (facts.named || of === 'bushing') return used(facts, facts.named ? 'said' : 'usual');
  // The metal of the part that may be heated is asked for safety's sake, and is the boss's.
  const asked = { iron: 'cast iron', 'known-alloy': 'alloy steel' } as const;
  const { metal } = job.safety;
  if (metal === 'iron' || metal === 'known-alloy') {
    return used(materialFacts(job, asked[metal]), 'safety');
  }
  return used(facts, metal === 'plain-steel' ? 'safety' : 'usual');
}

/** All metals of the job: the usual ones, then its own. */
export function metalsOf(job: Job): MetalUsed[] {
  const own = (job.materials ?? []).map(({ name }) => name);
  const names = [
    ...METAL_NAMES,
    ...own.filter((name) => !METAL_NAMES.includes(name.toLowerCase())),
  ];
  return names.map((name) => used(materialFacts(job, name), 'said'));
}

function used({ name, metal, stated, faulty }: MaterialFacts, from: MetalUsed['from']): MetalUsed {
  const { brittle, sources, ...usual } = metalNamed(metal);
  return {
    material: { ...usual, ...stated, name },
    brittle,
    metal,
    from,
    stated: Object.keys(stated) as MaterialFigure[],
    faulty,
    sources,
  };
}
