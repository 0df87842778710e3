import type { IForbiddenRuleType } from 'dependency-cruiser';

/** What a layer of src/ may import from the others. `types` are erased before anything runs. */
interface Layer {
  readonly imports: readonly string[];
  readonly types?: readonly string[];
  /** Packages (and Node's own modules) it may import; any, if not given. */
  readonly packages?: readonly string[];
}

export const LAYERS: Readonly<Record<string, Layer>> = {
  num: { imports: [], packages: [] },
  geometry: { imports: ['num'], packages: ['delaunator'] },
  bore: { imports: ['geometry', 'num'], types: ['job'], packages: [] },
  assembly: { imports: ['num'], types: ['bore'], packages: [] },
  job: { imports: [], packages: ['valibot', 'd3', 'd3-dsv'] },
  evaluate: { imports: ['bore', 'assembly', 'job', 'geometry', 'num'], packages: [] },
  // The job's own formatters and clock are plain functions: one way to write a length or an hour, everywhere.
  figures: {
    imports: ['geometry', 'num', 'job'],
    types: ['evaluate', 'bore'],
    packages: ['d3', 'd3-\\w+'],
  },
  drawings: { imports: ['figures', 'job'] },
  print: { imports: ['drawings', 'figures', 'job'] },
  practice: { imports: ['evaluate', 'job', 'bore', 'assembly', 'geometry', 'num'], packages: [] },
  cli: {
    imports: ['evaluate', 'job', 'geometry', 'print', 'drawings', 'figures', 'practice'],
    types: ['bore'],
  },
  store: { imports: ['job', 'evaluate'] },
  views: {
    imports: ['store', 'figures', 'drawings', 'practice', 'job'],
    types: ['evaluate', 'bore'],
  },
  app: { imports: ['views', 'store'] },
};

/** A layer is a folder of src/ or one file. */
const placeOf = (names: readonly string[]) => `^src/(${names.join('|')})(/|\\.tsx?$)`;

function rulesOf(name: string, { imports, types = [], packages }: Layer): IForbiddenRuleType[] {
  const from = { path: placeOf([name]) };
  const rules: IForbiddenRuleType[] = [
    {
      name,
      severity: 'error',
      from,
      to: { path: '^src/', pathNot: placeOf([name, ...imports, ...types]) },
    },
  ];
  if (types.length > 0) {
    const to = { path: placeOf(types), dependencyTypesNot: ['type-only' as const] };
    rules.push({ name: `${name}-types`, severity: 'error', from, to });
  }
  if (packages) {
    const allowed = packages.length > 0 ? `node_modules/(${packages.join('|')})/` : undefined;
    const to = { pathNot: allowed ? ['^src/', allowed] : '^src/' };
    rules.push({ name: `${name}-packages`, severity: 'error', from, to });
  }
  return rules;
}

export const RULES: readonly IForbiddenRuleType[] = [
  ...Object.entries(LAYERS).flatMap(([name, layer]) => rulesOf(name, layer)),
  {
    name: 'scene-alone',
    severity: 'error',
    from: { path: '^src/', pathNot: '^src/views/scene(/|\\.tsx?$)' },
    to: { path: 'node_modules/(@types/)?(three|@react-three/fiber)/' },
  },
  { name: 'cycle', severity: 'error', from: {}, to: { circular: true } },
  {
    // An import that cannot be followed could be any of the above.
    name: 'unresolved',
    severity: 'error',
    from: {},
    to: { couldNotResolve: true },
  },
];
