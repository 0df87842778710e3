import { mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { cruise, type ICruiseResult } from 'dependency-cruiser';
import { afterEach, describe, expect, it } from 'vitest';
import { LAYERS, RULES } from './layers.rules.ts';

const ROOT = resolve(import.meta.dirname, '..');

async function look(baseDir: string): Promise<ICruiseResult> {
  const { output } = await cruise(['src'], {
    baseDir,
    validate: true,
    ruleSet: { forbidden: [...RULES] },
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types'] },
  });
  if (typeof output === 'string') throw new Error(`not a result: ${output}`);
  return output;
}

const broken = (result: ICruiseResult) =>
  result.summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`);

describe('the folders of src', () => {
  it('import only what their layer may', async () => {
    const result = await look(ROOT);
    const code = result.modules.filter(({ source }) => /^src\/.+\.tsx?$/.test(source));
    expect(code.length).toBeGreaterThan(20);
    expect(code.some(({ dependencies }) => dependencies.length > 0)).toBe(true);
    expect(broken(result)).toEqual([]);
  });

  it('are all layers', () => {
    const names = readdirSync(join(ROOT, 'src'), { withFileTypes: true })
      .filter((entry) => entry.isDirectory() || /\.tsx?$/.test(entry.name))
      .map(({ name }) => name.replace(/\.tsx?$/, ''))
      .filter((name) => !name.endsWith('.d'));
    expect(names.length).toBeGreaterThan(0);
    expect(Object.keys(LAYERS)).toEqual(expect.arrayContaining(names));
  });
});

/** For each rule one file that breaks it and nothing else: the check is worth what it finds here. */
const PLANTED: Readonly<Record<string, readonly [file: string, code: string]>> = {
  num: ['src/num/a.ts', "import { x } from '../geometry/ok.ts';"],
  'num-packages': ['src/num/b.ts', "import 'node:fs';"],
  geometry: ['src/geometry/a.ts', "import { x } from '../bore/ok.ts';"],
  'geometry-packages': ['src/geometry/b.ts', "import 'd3';"],
  bore: ['src/bore/a.ts', "import { x } from '../assembly/ok.ts';"],
  'bore-types': ['src/bore/b.ts', "import { x } from '../job/ok.ts';"],
  'bore-packages': ['src/bore/c.ts', "import 'valibot';"],
  assembly: ['src/assembly/a.ts', "import { x } from '../geometry/ok.ts';"],
  'assembly-types': ['src/assembly/b.ts', "import { x } from '../bore/ok.ts';"],
  'assembly-packages': ['src/assembly/c.ts', "import 'd3';"],
  job: ['src/job/a.ts', "import type { X } from '../num/ok.ts';"],
  'job-packages': ['src/job/b.ts', "import 'react';"],
  evaluate: ['src/evaluate.ts', "import { x } from './store/ok.ts';"],
  'evaluate-packages': ['src/evaluate/a.ts', "import 'zustand';"],
  figures: ['src/figures/a.ts', "import type { X } from '../assembly/ok.ts';"],
  'figures-types': ['src/figures/b.ts', "import { x } from '../evaluate/ok.ts';"],
  'figures-packages': ['src/figures/c.ts', "import 'react';"],
  drawings: ['src/drawings/a.tsx', "import { x } from '../evaluate/ok.ts';"],
  print: ['src/print/a.ts', "import { x } from '../store/ok.ts';"],
  practice: ['src/practice/a.ts', "import { x } from '../views/ok.tsx';"],
  'practice-packages': ['src/practice/b.ts', "import 'react';"],
  cli: ['src/cli/a.ts', "import { x } from '../store/ok.ts';"],
  'cli-types': ['src/cli/b.ts', "import { x } from '../bore/ok.ts';"],
  store: ['src/store/a.ts', "import { x } from '../figures/ok.ts';"],
  views: ['src/views/a.tsx', "import { x } from '../geometry/ok.ts';"],
  'views-types': ['src/views/b.tsx', "import { x } from '../evaluate/ok.ts';"],
  app: ['src/app/a.tsx', "import { x } from '../drawings/ok.ts';"],
  'scene-alone': ['src/views/map.tsx', "const three = import('three');"],
  cycle: ['src/num/c.ts', "import './c.ts';"],
  unresolved: ['src/app/b.ts', "import './nowhere.ts';"],
};

/** Imports that the rules allow, and must go on allowing. */
const ALLOWED: readonly (readonly [file: string, code: string])[] = [
  ['src/bore/good.ts', "import type { X } from '../job/ok.ts';\nimport { x } from '../num/ok.ts';"],
  ['src/figures/good.ts', "import type { X } from '../evaluate/ok.ts';\nimport 'd3';"],
  ['src/views/scene/good.tsx', "import 'three';\nimport '@react-three/fiber';"],
  [
    'src/app/good.tsx',
    "import { x } from '../views/ok.tsx';\nconst lazy = import('../store/ok.ts');",
  ],
];

describe('the layer check', () => {
  let folder = '';
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  function plant(files: readonly (readonly [file: string, code: string])[]): void {
    folder = mkdtempSync(join(tmpdir(), 'roundhand-layers-'));
    symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'), 'junction');
    const suffix = (name: string) => (name === 'views' ? 'ok.tsx' : 'ok.ts');
    const targets = Object.keys(LAYERS).map((name) => [`src/${name}/${suffix(name)}`, ''] as const);
    for (const [file, code] of [...targets, ...files]) {
      mkdirSync(dirname(join(folder, file)), { recursive: true });
      writeFileSync(join(folder, file), `${code}\nexport const x = 1;\nexport type X = number;\n`);
    }
  }

  it('has a planted fault for every rule', () => {
    expect(Object.keys(PLANTED)).toEqual(RULES.map(({ name }) => name));
  });

  it('finds each planted fault, by the rule meant for it', async () => {
    plant(Object.values(PLANTED));
    const found = (await look(folder)).summary.violations.map(
      ({ rule, from }) => `${rule.name}: ${from}`,
    );
    const planted = Object.entries(PLANTED).map(([rule, [file]]) => `${rule}: ${file}`);
    expect(found.sort()).toEqual(planted.sort());
  });

  it('lets through what is allowed', async () => {
    plant(ALLOWED);
    const result = await look(folder);
    expect(result.summary.totalDependenciesCruised).toBeGreaterThanOrEqual(8);
    expect(broken(result)).toEqual([]);
  });
});
