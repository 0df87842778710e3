/** Metals in words: which one a part is taken to be of, and its figures with their units and sources. */
import type { FitFound } from '../evaluate/fit.ts';
import type { MaterialFigure } from '../job/materialSchema.ts';

export type MetalUsed = FitFound['metals'][number];

interface FigureTitle {
  readonly name: string;
  readonly unit: string;
  /** Units of the program in one that is shown. */
  readonly one: number;
}

/** In the order in which they are shown. */
export const METAL_FIGURES: Readonly<Record<MaterialFigure, FigureTitle>> = {
  elastic: { name: 'Stiffness (Young’s modulus)', unit: 'GPa', one: 1000 },
  poisson: { name: 'Poisson’s ratio', unit: '', one: 1 },
  yield: { name: 'Yield strength', unit: 'MPa', one: 1 },
  expansion: { name: 'Expansion', unit: 'millionths per °C', one: 1e-6 },
  density: { name: 'Density', unit: 'kg per cubic metre', one: 1 },
  conductivity: { name: 'Heat conductivity', unit: 'W per m and °C', one: 1 },
  heat: { name: 'Specific heat', unit: 'J per kg and °C', one: 1 },
  melts: { name: 'Begins to melt at', unit: '°C', one: 1 },
};

export interface MetalRow {
  readonly figure: MaterialFigure;
  readonly name: string;
  readonly unit: string;
  /** The usual figure, as it would be typed. */
  readonly usual: string;
  readonly stated: boolean;
  readonly source: string;
}

export function metalRows(used: MetalUsed): MetalRow[] {
  return (Object.keys(METAL_FIGURES) as MaterialFigure[]).map((figure) => {
    const { name, unit, one } = METAL_FIGURES[figure];
    const stated = used.stated.includes(figure);
    return {
      figure,
      name: figure === 'yield' && used.brittle ? 'Tensile strength' : name,
      unit,
      usual: plain(used.material[figure] / one),
      stated,
      source: stated ? 'as you said' : used.sources[figure],
    };
  });
}

/** No digits that only the arithmetic made. */
function plain(value: number): string {
  return String(Number(value.toPrecision(6)));
}

/** `plain steel (nobody has said: the usual)`. */
export function metalName({ material, metal, from, stated }: MetalUsed): string {
  const { name } = material;
  const like = name === metal ? '' : `, with the figures of ${metal} where you stated none`;
  const own = stated.length > 0 && name === metal ? ', some figures your own' : '';
  const told = {
    said: '',
    usual: ' (nobody has said: the usual)',
    safety: ' (as answered before heat)',
  } as const;
  return `${name}${like}${own}${told[from]}`;
}

export const METALS_SAID =
  'One name covers many grades: these are one common grade’s, near 20 °C. Where you know the grade, type its own figures. A figure that is emptied is the usual one again.';

/** What is typed and cannot be; empty where nothing is. */
export function metalFaults({ material, faulty }: MetalUsed): string[] {
  return faulty.map((figure) => {
    const { name } = METAL_FIGURES[figure];
    return `${name} of ${material.name}: no such figure is possible; the usual one counts.`;
  });
}
