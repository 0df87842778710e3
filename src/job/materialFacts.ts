/** Which metal a part's free text names in this job, and what the job says of that metal. */
import type { MaterialFigure, OwnMaterial } from './materialSchema.ts';
import { numberOf } from './mendingFacts.ts';
import type { Job } from './schema.ts';
import { metalOf } from './temperature.ts';

/** What a typed figure may be, and what one of its units is in those of the program (MPa, per °C, kg/m³, W/(m K), J/(kg K)). */
const FIGURE_LIMITS: Readonly<
  Record<MaterialFigure, { readonly least: number; readonly most: number; readonly one: number }>
> = {
  elastic: { least: 1, most: 1000, one: 1000 },
  poisson: { least: 0, most: 0.49, one: 1 },
  yield: { least: 1, most: 5000, one: 1 },
  expansion: { least: 0.1, most: 100, one: 1e-6 },
  density: { least: 500, most: 25_000, one: 1 },
  conductivity: { least: 0.1, most: 1000, one: 1 },
  heat: { least: 50, most: 10_000, one: 1 },
  melts: { least: 50, most: 4000, one: 1 },
};

export interface MaterialFacts {
  /** The own entry's name, or the usual metal's. */
  readonly name: string;
  /** The usual metal whose figures stand where the job states none. */
  readonly metal: string;
  /** False: the text names no metal that is known, and plain steel is taken. */
  readonly named: boolean;
  /** Figures that the job states, in the program's units. */
  readonly stated: Readonly<Partial<Record<MaterialFigure, number>>>;
  /** Figures that are typed and cannot be: the usual ones count. */
  readonly faulty: readonly MaterialFigure[];
}

/** @param text as it stands at the boss or the bushing; left out or empty: plain steel, and not named */
export function materialFacts(
  { materials = [] }: Pick<Job, 'materials'>,
  text: string | undefined,
): MaterialFacts {
  const find = (name: string) => materials.find((one) => sameName(one.name, name));
  const { name: metal, named } = metalOf(text);
  const own = find(text ?? '');
  const entry = own ?? find(metal);
  return {
    name: own?.name ?? metal,
    metal,
    named: named || own !== undefined,
    ...figuresOf(entry),
  };
}

/** Written alike but for capitals and the blanks around it. */
export function sameName(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}

function figuresOf(entry: OwnMaterial | undefined): Pick<MaterialFacts, 'stated' | 'faulty'> {
  const stated: Partial<Record<MaterialFigure, number>> = {};
  const faulty: MaterialFigure[] = [];
  for (const figure of Object.keys(FIGURE_LIMITS) as MaterialFigure[]) {
    const text = entry?.[figure];
    if (text === undefined || text.trim() === '') continue;
    const value = numberOf(text);
    const { least, most, one } = FIGURE_LIMITS[figure];
    if (value >= least && value <= most) stated[figure] = value * one;
    else faulty.push(figure);
  }
  return { stated, faulty };
}
