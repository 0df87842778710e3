/** The passes as the report tells them, checked from the report's own figures: what a reader of it can hold against it. */
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run } from './run.ts';

const FOLDER = resolve(import.meta.dirname, '../../demo-data');
/** One in millimetres with a seat and a keepout, one in inches. */
const DEMOS = ['quarry-conveyor.roundhand.json', 'orchard-boom-hinge.roundhand.json'];

type Matrix = (number | null)[][];
interface Told {
  name: string;
  deviation: Matrix;
  removal: { sd: Matrix; likely: Matrix };
  passes: {
    tool: { radius: number; width: number; bite: number };
    removal: Matrix;
    greatest: number;
    gate: { why: string; expected: { instrument: string; before: number; after: number }[] }[];
    words: string[];
  }[];
  grinding: { left: { most: number; why: string }[]; leftMost: number } | null;
}

/** Rounding of sums of figures below 1 mm. */
const ROUNDING = 1e-12;

describe.each(DEMOS)('%s', (file) => {
  test('no pass cuts below the target, beyond its bite, or nearer than its give-or-take at first', async () => {
    const { out } = await run('report', resolve(FOLDER, file), '--json');
    const surveys: Told[] = JSON.parse(out).bores.flatMap(
      (bore: { surveys: Told[] }) => bore.surveys,
    );
    const planned = surveys.filter(({ grinding }) => grinding !== null);
    expect(planned.length).toBeGreaterThan(0);
    for (const { deviation, removal, passes, grinding, name } of planned) {
      const left = deviation.map((row) => row.map((e) => -e!));
      passes.forEach((pass, at) => {
        let faults = 0;
        pass.removal.forEach((row, iz) => {
          row.forEach((g, it) => {
            if (g === null) return;
            const sure = left[iz]![it]! - (at === 0 ? 2 * removal.sd[iz]![it]! : 0);
            const most = Math.max(0, Math.min(pass.tool.bite, sure));
            if (!(g >= 0 && g <= most + ROUNDING)) faults++;
            left[iz]![it]! -= g;
          });
        });
        expect(faults, `${name}, pass ${at + 1}`).toBe(0);
        expect(pass.words[0]).toMatch(/^Pass \d+: .* per side at most/);
      });
      const places = removal.likely.flatMap((row, iz) =>
        row.map((likely, it) => (likely !== null && likely > 0 ? left[iz]![it]! : 0)),
      );
      expect(Math.max(...places)).toBeCloseTo(grinding!.leftMost, 9);
      if (grinding!.leftMost >= 0.0025) expect(grinding!.left.length).toBeGreaterThan(0);
    }
  });
});
