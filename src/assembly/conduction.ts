/**
 * Heat going radially through rings that lie one in the other, with air inside and outside: finite volumes, and an
 * implicit step of second order that no step length makes unstable (trapezium, then backward difference). Millimetres
 * and degrees Celsius come in; watts, metres, kelvins, seconds within, by radian and metre of length.
 */
import { factorInPlace, solveFactored, type Tridiagonal } from '../num/tridiagonal.ts';

export interface Conducts {
  /** W/(m K). */
  readonly conductivity: number;
  /** kg/m³. */
  readonly density: number;
  /** J/(kg K). */
  readonly heat: number;
}

export interface Layer {
  /** Radii, mm; `inner` 0 is a solid bar. */
  readonly inner: number;
  readonly outer: number;
  readonly metal: Conducts;
  /** °C at the beginning, all through. */
  readonly start: number;
}

export interface Edges {
  /** Films to the air, W/(m² K). */
  readonly inside: number;
  readonly outside: number;
  /** °C. */
  readonly air: number;
  /** Heat put into the outside at a time in seconds, W/m². */
  readonly flame?: (seconds: number) => number;
}

export interface Rings {
  readonly layers: readonly Layer[];
  readonly edges: Edges;
  /** Cells a layer. */
  readonly cells: number;
}

/** What is told after each step. */
export interface Moment {
  readonly seconds: number;
  /** °C by cell, all layers from the inside; the same array at every step. */
  readonly celsius: Float64Array;
}

interface Cells {
  /** Heat capacity by cell, J/K by radian and metre. */
  readonly capacity: Float64Array;
  /** Conductance from each cell to the next, W/K by radian and metre; at a joint without what lies between. */
  readonly links: Float64Array;
  /** Places in `links` where layers meet, and the radius there, m. */
  readonly joints: readonly { readonly link: number; readonly radius: number }[];
  readonly toInside: number;
  readonly toOutside: number;
  readonly outerRadius: number;
}

const MM = 1e-3;
/** Of the step, by which trapezium and backward difference share one matrix. */
const GAMMA = 2 - Math.SQRT2;

/**
 * Follows the temperatures through the times given, ascending from above 0.
 *
 * @param joint conductance where layers meet, W/(m² K), asked before each step with the time in its middle
 * @param tell after each step; false ends it
 */
export function conduct(
  rings: Rings,
  times: Iterable<number>,
  joint: (seconds: number) => number,
  tell: (moment: Moment) => boolean,
): void {
  const cells = cellsOf(rings);
  const { edges } = rings;
  const celsius = startOf(rings);
  const system = systemOf(celsius.length);
  const flow = new Float64Array(celsius.length);
  const middle = new Float64Array(celsius.length);
  const links = Float64Array.from(cells.links);
  const intoBy = (at: number) => (edges.flame?.(at) ?? 0) * cells.outerRadius;
  let now = 0;
  for (const then of times) {
    const step = then - now;
    const part = (GAMMA / 2) * step;
    const between = joint(now + step / 2);
    for (const { link, radius } of cells.joints) {
      links[link] = inSeries(cells.links[link]!, between * radius);
    }
    assemble(system, cells, links, part);
    // To GAMMA of the step by the trapezium.
    flowInto(flow, celsius, cells, links, edges.air);
    for (let i = 0; i < flow.length; i++)
      middle[i] = cells.capacity[i]! * celsius[i]! + part * flow[i]!;
    addEdges(middle, cells, edges.air, part);
    middle[middle.length - 1] = middle.at(-1)! + part * (intoBy(now) + intoBy(now + GAMMA * step));
    solveFactored(system, middle);
    // To its end by the backward difference over all three.
    const a = 1 / (GAMMA * (2 - GAMMA));
    for (let i = 0; i < flow.length; i++) {
      celsius[i] = cells.capacity[i]! * (a * middle[i]! - (a - 1) * celsius[i]!);
    }
    addEdges(celsius, cells, edges.air, part);
    celsius[celsius.length - 1] = celsius.at(-1)! + part * intoBy(then);
    solveFactored(system, celsius);
    now = then;
    if (!tell({ seconds: now, celsius })) return;
  }
}

/** Mean by area over one layer of a function of the temperature. */
export function meanOver(
  { layers, cells }: Rings,
  which: number,
  celsius: Float64Array,
  of: (celsius: number) => number,
): number {
  const { inner, outer } = layers[which]!;
  const wide = (outer - inner) / cells;
  let sum = 0;
  for (let i = 0; i < cells; i++) {
    // Area of a ring of one cell is its middle radius times its width.
    sum += (inner + (i + 0.5) * wide) * of(celsius[which * cells + i]!);
  }
  return (2 * wide * sum) / (outer ** 2 - inner ** 2);
}

function cellsOf({ layers, cells, edges }: Rings): Cells {
  const capacity = new Float64Array(layers.length * cells);
  const links = new Float64Array(capacity.length);
  const joints: { link: number; radius: number }[] = [];
  for (const [which, { inner, outer, metal }] of layers.entries()) {
    const wide = ((outer - inner) / cells) * MM;
    for (let i = 0; i < cells; i++) {
      const middle = inner * MM + (i + 0.5) * wide;
      const at = which * cells + i;
      capacity[at] = metal.density * metal.heat * middle * wide;
      links[at] = metal.conductivity / Math.log((middle + wide) / middle);
    }
    const next = layers[which + 1];
    if (next) {
      const link = (which + 1) * cells - 1;
      links[link] = inSeries(
        halfCell(layers[which]!, cells, 'outer'),
        halfCell(next, cells, 'inner'),
      );
      joints.push({ link, radius: outer * MM });
    }
  }
  const [first, last] = [layers[0]!, layers.at(-1)!];
  return {
    capacity,
    links,
    joints,
    toInside: inSeries(halfCell(first, cells, 'inner'), edges.inside * first.inner * MM),
    toOutside: inSeries(halfCell(last, cells, 'outer'), edges.outside * last.outer * MM),
    outerRadius: last.outer * MM,
  };
}

/** Conductance from the middle of a layer's first or last cell to its edge. */
function halfCell({ inner, outer, metal }: Layer, cells: number, edge: 'inner' | 'outer'): number {
  const half = (outer - inner) / cells / 2;
  const ratio = edge === 'inner' ? (inner + half) / inner : outer / (outer - half);
  return metal.conductivity / Math.log(ratio);
}

/** Two conductances one after the other; 0 where either is. */
function inSeries(a: number, b: number): number {
  return a > 0 && b > 0 ? 1 / (1 / a + 1 / b) : 0;
}

function startOf({ layers, cells }: Rings): Float64Array {
  return Float64Array.from(
    { length: layers.length * cells },
    (_, i) => layers[Math.floor(i / cells)]!.start,
  );
}

function systemOf(length: number): Tridiagonal {
  return {
    below: new Float64Array(length),
    diagonal: new Float64Array(length),
    above: new Float64Array(length),
  };
}

function assemble(
  { below, diagonal, above }: Tridiagonal,
  { capacity, toInside, toOutside }: Cells,
  links: Float64Array,
  part: number,
): void {
  const last = capacity.length - 1;
  for (let i = 0; i <= last; i++) {
    const down = i === 0 ? toInside : links[i - 1]!;
    const up = i === last ? toOutside : links[i]!;
    below[i] = i === 0 ? 0 : -part * down;
    above[i] = i === last ? 0 : -part * up;
    diagonal[i] = capacity[i]! + part * (down + up);
  }
  factorInPlace({ below, diagonal, above });
}

/** Heat that flows into each cell from its neighbours and the air, W by radian and metre. */
function flowInto(
  flow: Float64Array,
  celsius: Float64Array,
  { toInside, toOutside }: Cells,
  links: Float64Array,
  air: number,
): void {
  const last = flow.length - 1;
  for (let i = 0; i <= last; i++) {
    const down =
      i === 0 ? toInside * (air - celsius[0]!) : links[i - 1]! * (celsius[i - 1]! - celsius[i]!);
    const up =
      i === last ? toOutside * (air - celsius[last]!) : links[i]! * (celsius[i + 1]! - celsius[i]!);
    flow[i] = down + up;
  }
}

function addEdges(right: Float64Array, { toInside, toOutside }: Cells, air: number, part: number) {
  const last = right.length - 1;
  right[0] = right[0]! + part * toInside * air;
  right[last] = right[last]! + part * toOutside * air;
}
