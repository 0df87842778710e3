/**
 * Holds a fit against a set whose answer is known. The bar is 1e-9 mm + 1e-9 of the form error for
 * circles and 1e-8 mm for cylinders and cones, angles 1e-9; for far-off coordinates four units in
 * their last place times the conditioning that the fit itself reports, since each coordinate was
 * rounded by half a unit when the set was written.
 */
import { expect } from 'vitest';
import { dot, lastPlace } from './generated.ts';
import type { Asked, Known } from './generatedMinimax.ts';
import { type Claimed, faults } from './optimum.ts';

export type Fitted = ({ status: 'ok'; conditioning: number } & Claimed) | { status: string };

export function checkKnown(asked: Asked, known: Known, fit: Fitted): void {
  if (!('axis' in fit || 'center' in fit)) throw new Error(fit.status);
  const found = fit as Claimed & { conditioning: number };
  const { columns } = known;
  const grain = 4 * lastPlace(columns) * found.conditioning;
  const near = (asked.feature === 'circle' ? 1e-9 + 1e-9 * asked.form : 1e-8) + grain;
  expect(faults(columns, asked.criterion, found)).toEqual([]);
  if (found.axis === undefined) {
    const [a, b] = found.center as [number, number];
    expect(Math.hypot(a - asked.point[0], b - asked.point[1])).toBeLessThan(near);
    expect(Math.abs(found.diameter - 2 * asked.radius)).toBeLessThan(near);
  } else {
    checkAxis(asked, found as typeof found & Required<Pick<Claimed, 'axis'>>, near, grain);
  }
  const range = found.deviation.range;
  expect(Math.abs(range - known.range)).toBeLessThan(near);
  if (!Number.isNaN(known.conditioning)) {
    // Told by largest sums there and by lengths here, and about other points of the axis.
    const told = found.conditioning / known.conditioning;
    expect(told).toBeGreaterThan(0.5);
    expect(told).toBeLessThan(4);
  }
  // A normal turns by `near` over the radius, and weights by that times what holds the corner.
  const loose = Number.isNaN(known.conditioning) ? 100 : 10 * known.conditioning;
  checkContacts(known, found, (loose * near) / Math.min(asked.radius, asked.length));
}

/** Both ends of the wall: offset of the axis there; direction, size and half-angle. */
function checkAxis(
  asked: Asked,
  fit: Claimed & Required<Pick<Claimed, 'axis'>>,
  near: number,
  grain: number,
): void {
  const { point, direction, length } = asked;
  const axis = fit.axis;
  for (const end of [-0.5, 0.5]) {
    const from = point.map((p, d) => p + end * length * direction[d]! - axis.point[d]!);
    const along = dot(from, axis.direction);
    const gap = from.map((v, d) => v - along * axis.direction[d]!);
    expect(Math.hypot(...gap)).toBeLessThan(near);
  }
  const lean = 1e-9 + (2 * grain) / length;
  const same = Math.sign(dot(axis.direction, direction));
  const apart = axis.direction.map((v, d) => v - same * direction[d]!);
  expect(Math.hypot(...apart)).toBeLessThan(lean);
  const angle = same * (fit.halfAngle ?? 0);
  expect(Math.abs(angle - asked.halfAngle)).toBeLessThan(lean);
  const level = dot(
    axis.point.map((v, d) => v - point[d]!),
    direction,
  );
  const radius = asked.radius + level * Math.tan(asked.halfAngle);
  expect(Math.abs(fit.diameter - 2 * radius)).toBeLessThan(near);
}

/** The same contacts, told by their coordinates (a point may be there twice), with their weights. */
function checkContacts({ columns, contacts }: Known, fit: Claimed, within: number): void {
  const keyOf = (row: number) => columns.map((column) => column[row]!).join(' ');
  const found = new Map<string, number>();
  fit.contacts.forEach((row, k) => {
    found.set(keyOf(row), (found.get(keyOf(row)) ?? 0) + fit.multipliers[k]!);
  });
  expect([...found.keys()].sort()).toEqual(contacts.map(({ row }) => keyOf(row)).sort());
  for (const { row, multiplier } of contacts) {
    expect(Math.abs(found.get(keyOf(row))! - multiplier)).toBeLessThan(within);
  }
}
