/**
 * The demo jobs: invented parts of an invented district, Harrow Sound, each measured by a simulated hand in a bore
 * of known wear. `npm run demos` writes them to demo-data/.
 */
import type { Job } from '../job/schema.ts';
import { elevatorHeadArm } from './demos/elevatorHeadArm.ts';
import { orchardBoomHinge } from './demos/orchardBoomHinge.ts';
import { orchardLiftClevis } from './demos/orchardLiftClevis.ts';
import { quarryConveyor } from './demos/quarryConveyor.ts';
import { sawmillRockerShaft } from './demos/sawmillRockerShaft.ts';
import { slipwayWinch } from './demos/slipwayWinch.ts';

export interface DemoJob {
  readonly file: string;
  readonly job: Job;
}

export function demoJobs(): DemoJob[] {
  return [
    { file: 'slipway-winch.roundhand.json', job: slipwayWinch() },
    { file: 'quarry-conveyor.roundhand.json', job: quarryConveyor() },
    { file: 'elevator-head-arm.roundhand.json', job: elevatorHeadArm() },
    { file: 'orchard-boom-hinge.roundhand.json', job: orchardBoomHinge() },
    { file: 'orchard-lift-clevis.roundhand.json', job: orchardLiftClevis() },
    { file: 'sawmill-rocker-shaft.roundhand.json', job: sawmillRockerShaft() },
  ];
}
