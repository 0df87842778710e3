/**
 * The usual metals of bosses and bushings, each figure with where it is from. A metal's name covers many grades: these are
 * one common grade's, stated, and every one of them can be changed in a job.
 */
import type { Material } from './material.ts';
import { STEEL_DENSITY, STEEL_MODULUS, STEEL_POISSON } from './steel.ts';

export type MaterialFigure = Exclude<keyof Material, 'name'>;

/** One figure of a metal and its source. Units as in `Material`. */
type Sourced = readonly [value: number, source: string];

/** A metal of the table. */
export interface Metal extends Material {
  /** Breaks before it yields: `yield` is then the tensile strength. */
  readonly brittle: boolean;
  readonly sources: Readonly<Record<MaterialFigure, string>>;
}

const APPENDIX = 'Callister and Rethwisch, Materials Science and Engineering, appendix B';
const EXPANSION = `${APPENDIX}, expansion`;
const STRENGTH = (grade: string) => `${APPENDIX}, strength: ${grade}`;
const HEAT_BOOK = 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table A.1';
const DATA_BOOK = 'heat and mass transfer data book, metals at 20 °C';
const CATALOGUE = 'spring and gear catalogue, table of metals';
const MEMORY = 'from memory, not looked up';

/** By the name that a free text is understood as (`metalOf` of the job). */
const TABLE: Readonly<
  Record<string, Readonly<Record<MaterialFigure, Sourced>> & { readonly brittle?: true }>
> = {
  'plain steel': {
    elastic: [STEEL_MODULUS, 'EN 1993-1-1:2005, 3.2.6'],
    poisson: [STEEL_POISSON, 'EN 1993-1-1:2005, 3.2.6'],
    yield: [235, 'EN 10025-2, S235, the least of the usual plain steels'],
    expansion: [11.5e-6, `${EXPANSION}, between 1040 and 1020`],
    density: [STEEL_DENSITY * 1e6, 'EN 1993-1-1, after EN 1991-1-1: 7850 kg a cubic metre'],
    conductivity: [53.6, `${DATA_BOOK}: steel of 0.5 % carbon`],
    heat: [465, `${DATA_BOOK}: steel of 0.5 % carbon`],
    melts: [1425, MEMORY],
  },
  'hardened bearing steel': {
    elastic: [203_400, 'maker’s sheets of 52100: 29.5 million psi'],
    poisson: [0.3, MEMORY],
    yield: [1570, STRENGTH('4140, quenched and tempered at 315 °C; bearing steel lies higher')],
    expansion: [12e-6, `between 11.5 and 12.5, ${MEMORY}`],
    density: [7810, `52100, ${MEMORY}`],
    conductivity: [46.6, `52100, ${MEMORY}`],
    heat: [475, `52100, ${MEMORY}`],
    melts: [1424, MEMORY],
  },
  'alloy steel': {
    elastic: [207_000, `${APPENDIX}, modulus: 4140`],
    poisson: [0.3, `${APPENDIX}, Poisson’s ratio: steels`],
    yield: [417, STRENGTH('4140, annealed')],
    expansion: [12.3e-6, `${EXPANSION}: 4140`],
    density: [7850, `${APPENDIX}, density: 4140`],
    conductivity: [42.7, `4140, ${MEMORY}`],
    heat: [475, `4140, ${MEMORY}`],
    melts: [1416, MEMORY],
  },
  'cast iron': {
    elastic: [101_500, `${APPENDIX}, modulus: grey iron G3000, the middle of 90 to 113 GPa`],
    poisson: [0.26, `${APPENDIX}, Poisson’s ratio: grey irons`],
    yield: [207, STRENGTH('grey iron G3000, the tensile strength, for it breaks without yielding')],
    expansion: [11.1e-6, `${EXPANSION}: grey iron 11.4, other tables 10.8`],
    density: [7272, `${DATA_BOOK}: cast iron`],
    conductivity: [52, `${DATA_BOOK}: cast iron`],
    heat: [420, `${DATA_BOOK}: cast iron`],
    melts: [1150, MEMORY],
    brittle: true,
  },
  'ductile iron': {
    elastic: [169_000, `${APPENDIX}, modulus: 60-40-18`],
    poisson: [0.275, CATALOGUE],
    yield: [276, STRENGTH('60-40-18, annealed')],
    expansion: [10.9e-6, `${EXPANSION}: 10.6 to 11.2`],
    density: [7100, `${APPENDIX}, density, ${MEMORY}`],
    conductivity: [36, MEMORY],
    heat: [460, MEMORY],
    melts: [1150, MEMORY],
  },
  bronze: {
    elastic: [105_000, `${CATALOGUE}: bearing bronze, the middle of 100 to 110 GPa`],
    poisson: [0.34, `${APPENDIX}, Poisson’s ratio: C93200`],
    yield: [125, STRENGTH('C93200 bearing bronze, sand cast')],
    expansion: [18e-6, `${EXPANSION}: C93200`],
    density: [8780, `${DATA_BOOK}: phosphor gear bronze`],
    conductivity: [54, `${DATA_BOOK}: phosphor gear bronze`],
    heat: [355, `${DATA_BOOK}: phosphor gear bronze`],
    melts: [855, `C93200, ${MEMORY}`],
  },
  brass: {
    elastic: [105_000, `${CATALOGUE}: brass, the middle of 100 to 110 GPa`],
    poisson: [0.34, CATALOGUE],
    yield: [125, `C36000, annealed, ${MEMORY}`],
    expansion: [20.2e-6, `${EXPANSION}: 19.9 to 20.5`],
    density: [8530, `${HEAT_BOOK}: cartridge brass`],
    conductivity: [110, `${HEAT_BOOK}: cartridge brass`],
    heat: [380, `${HEAT_BOOK}: cartridge brass`],
    melts: [885, `C36000, ${MEMORY}`],
  },
  aluminium: {
    elastic: [69_000, `${APPENDIX}, modulus: 6061`],
    poisson: [0.33, `${APPENDIX}, Poisson’s ratio: 6061`],
    yield: [276, STRENGTH('6061-T6')],
    expansion: [22.6e-6, `${EXPANSION}: between 356 and 6061`],
    density: [2770, `${HEAT_BOOK}: 2024-T6`],
    conductivity: [177, `${HEAT_BOOK}: 2024-T6`],
    heat: [875, `${HEAT_BOOK}: 2024-T6`],
    melts: [582, `6061, ${MEMORY}`],
  },
  'stainless steel': {
    elastic: [193_000, `${APPENDIX}, modulus: 304`],
    poisson: [0.3, `${APPENDIX}, Poisson’s ratio: 304`],
    yield: [205, STRENGTH('304, hot finished and annealed, from memory')],
    expansion: [16.6e-6, `${EXPANSION}: between 316 and 304`],
    density: [7900, `${HEAT_BOOK}: 304`],
    conductivity: [14.9, `${HEAT_BOOK}: 304`],
    heat: [477, `${HEAT_BOOK}: 304`],
    melts: [1400, `304, ${MEMORY}`],
  },
};

const FIGURES: readonly MaterialFigure[] = [
  'elastic',
  'poisson',
  'yield',
  'expansion',
  'density',
  'conductivity',
  'heat',
  'melts',
];

export const METALS: readonly Metal[] = Object.entries(TABLE).map(([name, row]) => ({
  name,
  brittle: row.brittle ?? false,
  ...each((figure) => row[figure][0]),
  sources: each((figure) => row[figure][1]),
}));

function each<T>(of: (figure: MaterialFigure) => T): Record<MaterialFigure, T> {
  return Object.fromEntries(FIGURES.map((figure) => [figure, of(figure)])) as Record<
    MaterialFigure,
    T
  >;
}

/** The metal of the table that goes by exactly that name; plain steel where none does. */
export function metalNamed(name: string): Metal {
  return METALS.find((one) => one.name === name) ?? METALS[0]!;
}
