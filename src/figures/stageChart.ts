/** Out-of-round, worst high and worst low from stage to stage, as a chart: measured, then as planned. */
import type { Passes } from '../evaluate/passes.ts';
import type { Units } from '../job/schema.ts';
import { formatAcross, formatPerSide } from '../job/units.ts';
import { MAP_UNIT, MAP_UNIT_NAME } from './steps.ts';

export interface StageCurve {
  readonly kind: 'round' | 'high' | 'low';
  readonly name: string;
  /** In units of the map, one a stage. */
  readonly values: readonly number[];
}

export interface StageChartFigure {
  readonly stages: readonly string[];
  /** Stages before this one are measured, the others planned. */
  readonly measured: number;
  readonly unit: string;
  readonly most: number;
  readonly curves: readonly StageCurve[];
  readonly words: string;
}

/** @returns null with fewer than two stages: a chart of one says nothing */
export function stageChart({ stages }: Passes, units: Units): StageChartFigure | null {
  if (stages.length < 2) return null;
  const of = (mm: number) => mm / MAP_UNIT[units];
  const curves: StageCurve[] = [
    { kind: 'round', name: 'out-of-round, across', values: stages.map((s) => of(s.outOfRound)) },
    { kind: 'high', name: 'worst high, per side', values: stages.map((s) => of(s.high)) },
    { kind: 'low', name: 'worst low, per side', values: stages.map((s) => of(s.low)) },
  ];
  const told = stages.map(
    (s) =>
      `${s.name}${s.forecast ? ' (planned)' : ''}: out-of-round ${formatAcross(s.outOfRound, units)}, worst high ${formatPerSide(s.high, units)}, worst low ${formatPerSide(s.low, units)}`,
  );
  return {
    stages: stages.map(({ name }) => name),
    measured: stages.filter(({ forecast }) => !forecast).length,
    unit: MAP_UNIT_NAME[units],
    most: Math.max(...curves.flatMap(({ values }) => values), 1e-6),
    curves,
    words: `${told.join('. ')}.`,
  };
}
