/** Where the points of a generated set lie on its wall, and how the set stands. */
import type { Random } from '../../src/num/random.ts';
import type { CylinderAsked, Vector } from './generated.ts';

const TURN = 2 * Math.PI;

export type Places = (random: Random) => CylinderAsked['places'];

export const scattered =
  (count: number, arc: number): Places =>
  (random) =>
    Array.from({ length: count }, (_, i) => ({
      angle: i < 2 ? i * arc : random.uniform() * arc,
      z: i < 4 ? i / 3 - 0.5 : random.uniform() - 0.5,
    }));

export const rings =
  (angles: number, depths: number): Places =>
  (random) => {
    const start = random.uniform() * TURN;
    return Array.from({ length: angles * depths }, (_, i) => ({
      angle: start + ((i % angles) * TURN) / angles,
      z: Math.floor(i / angles) / (depths - 1) - 0.5,
    }));
  };

export const doubled =
  (places: Places): Places =>
  (random) => {
    const once = places(random);
    return [...once, ...once];
  };

export const tilted =
  (degrees: number) =>
  (random: Random): Vector => {
    const lean = (degrees * Math.PI) / 180;
    const turn = random.uniform() * TURN;
    return [Math.sin(lean) * Math.cos(turn), Math.sin(lean) * Math.sin(turn), Math.cos(lean)];
  };
