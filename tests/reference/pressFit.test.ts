/**
 * Press fits against published worked examples, to every digit that they print. The data of each example stands in its row,
 * its source above it. Sizes of examples that give radii are doubled.
 */
import { describe, expect, it } from 'vitest';
import { pressed, type Rings, slip } from '../../src/assembly/pressFit.ts';

const metal = (elastic: number, poisson: number) => ({ elastic, poisson });
const PSI = metal(30e6, 0.292);
const STEEL = metal(207_000, 0.292);

/** Within half of the last digit printed. */
function printed(value: number, told: number, digits: number): void {
  expect(Math.abs(value - told)).toBeLessThanOrEqual(0.5 * 10 ** -digits * (1 + 1e-9));
}

function rings(inside: number, seat: number, outside: number, one = STEEL, other = one): Rings {
  return { inside, seat, outside, bushing: one, boss: other };
}

describe('Shigley, Mechanical Engineering Design, solutions to chapter 3', () => {
  it('3-68: a solid 1 in shaft in a 2 in hub, 0.001 in per side', () => {
    const found = pressed(rings(0, 1, 2, PSI), 0.002);
    printed(found.pressure, 22_500, 0);
    printed(found.boss.hoopInside, 37_500, 0);
    printed(found.bushing.hoopOutside, -22_500, 0);
    // Hub and shaft of one metal: the outside grows by 0.001 in of the 0.002 in across.
    expect(found.grows).toBeCloseTo(0.001, 12);
  });

  // 40 mm and 1.5 in solid shafts in hubs of twice that: press fit per side, pressure.
  it.each([
    ['3-64', 40, 0.0295, 114.5, 1],
    ['3-64', 40, 0.009, 34.9, 1],
    ['3-66', 40, 0.038, 147.5, 1],
    ['3-66', 40, 0.0175, 67.9, 1],
  ])('%s: %f mm, %f per side', (_, seat, side, told, digits) => {
    printed(pressed(rings(0, seat, 2 * seat), 2 * side).pressure, told, digits);
  });

  it.each([
    ['3-65', 0.00115, 17_250],
    ['3-65', 0.00035, 5250],
    ['3-67', 0.0015, 22_500],
    ['3-67', 0.0007, 10_500],
  ])('%s: 1.5 in, %f in per side', (_, side, told) => {
    printed(pressed(rings(0, 1.5, 3, PSI), 2 * side).pressure, told, 0);
  });
});

describe('other worked examples', () => {
  it('Norton, Machine Design, 4th edition, 10-5: a steel shaft in a cast-iron hub', () => {
    const given = rings(0, 0.781, 3, metal(30e6, 0.28), metal(14e6, 0.28));
    const found = pressed(given, 0.0015);
    // The example cuts the last half; unrounded it is 15265.5.
    printed(found.pressure, 15_265.5, 1);
    expect(Math.floor(found.pressure)).toBe(15_265);
  });

  it('a bronze bushing 40/60 in a steel cylinder of 120, 0.05 mm per side', () => {
    const found = pressed(rings(40, 60, 120, metal(105_000, 0.3), metal(210_000, 0.3)), 0.1);
    printed(found.pressure, 53.3, 1);
    printed(found.boss.hoopInside, 88.8, 1);
    printed(found.boss.hoopOutside, 35.5, 1);
    printed(found.bushing.hoopInside, -191.9, 1);
    printed(found.bushing.hoopOutside, -138.6, 1);
  });

  it('compound steel cylinder 300/400/500, 0.2 mm across (a text on strength of materials, example 8.17)', () => {
    const found = pressed(rings(300, 400, 500, metal(200_000, 0.3)), 0.2);
    printed(found.pressure, 12.3, 1);
    printed(found.boss.hoopInside, 56.05, 2);
    printed(found.bushing.hoopOutside, -43.95, 2);
  });

  it('Bhandari, Design of Machine Elements, 22.6: the inner diameter of the jacket', () => {
    // Tubes 20/40 and 40/60 of one steel; the jacket's bore before it is put on is printed.
    const fit = 40 - 39.968289;
    const found = pressed(rings(20, 40, 60, metal(207_000, 0.3)), fit);
    // At this fit the jacket pulls 100 MPa at its bore. Half of the printed micrometre's last digit is 1.6e-5 of the fit.
    expect(Math.abs(found.boss.hoopInside / 100 - 1)).toBeLessThan(1.6e-5);
  });

  it('compound cylinder 100/200 in 200/300, 0.02 mm per side, E 208 GPa', () => {
    const found = pressed(rings(100, 200, 300, metal(208_000, 0.3)), 0.04);
    expect(found.pressure).toBeCloseTo(9.75, 10);
    expect(found.bushing.hoopInside).toBeCloseTo(-26, 10);
    expect(found.boss.hoopInside).toBeCloseTo(25.35, 10);
  });

  it('compound cylinder 140/180/220, 100 MPa at most in the outer one, E 200 GPa', () => {
    const found = pressed(rings(140, 180, 220, metal(200_000, 0.3)), 2 * 0.0812);
    // The fit is rounded to 0.0001 mm: 1 in 1600.
    expect(Math.abs(found.boss.hoopInside / 100 - 1)).toBeLessThan(1 / 1600);
    expect(Math.abs(found.pressure / 19.802 - 1)).toBeLessThan(1 / 1600);
    expect(Math.abs(found.bushing.hoopInside / -100.25 - 1)).toBeLessThan(1 / 1600);
  });

  it('strength-of-materials texts: 150/250/300 at 28 MPa, 60/120/200 at 0.04 mm per side', () => {
    const one = rings(150, 250, 300, metal(200_000, 0.3));
    printed(0.5 * (28 / pressed(one, 1).pressure), 0.13423, 5);
    printed(pressed(rings(60, 120, 200, metal(200_000, 0.3)), 0.08).pressure, 35.165, 3);
  });

  it('a hollow steel shaft 50/100 in a cast-iron disc of 250, 30 MPa at the hub, friction 0.15', () => {
    const given = rings(50, 100, 250, metal(210_000, 0.3), metal(70_000, 0.25));
    const fit = 30 / pressed(given, 1).boss.hoopInside;
    const found = pressed(given, fit);
    printed(found.pressure, 21.724, 3);
    printed(fit / 2, 0.03238, 5);
    const { force, torque } = slip(given, found, 100, 0.15);
    printed(force / 1000, 102.37, 2);
    printed(torque / 1000, 5118.6, 1);
  });
});

/** Independently computed (Lamé); 90/110 bushing in a 200 mm boss, 0.10 mm across, 80 mm long, friction 0.12. */
describe('a pivot bushing 90/110 in a boss of 200', () => {
  const steel = metal(207_000, 0.29);

  it('of steel in steel', () => {
    const given = rings(90, 110, 200, steel);
    const found = pressed(given, 0.1);
    printed(found.pressure, 27.2042, 4);
    printed(found.boss.hoopInside, 50.8007, 4);
    printed(found.bushing.hoopInside, -164.585, 3);
    printed(found.closesIn, 0.0715588, 7);
    printed(found.grows, 0.0227985, 7);
    const { force, torque } = slip(given, found, 80, 0.12);
    printed(force / 1000, 90.3, 1);
    printed(torque / 1000, 4963.8, 1);
  });

  it('of bronze', () => {
    const given = rings(90, 110, 200, metal(105_000, 0.34), steel);
    const found = pressed(given, 0.1);
    printed(found.pressure, 16.4454, 4);
    printed(found.closesIn, 0.0852812, 7);
    printed(slip(given, found, 80, 0.12).force / 1000, 54.6, 1);
  });

  it('in a boss of ductile iron', () => {
    const found = pressed(rings(90, 110, 200, steel, metal(169_000, 0.275)), 0.1);
    printed(found.pressure, 25.4847, 4);
    printed(found.closesIn, 0.0670359, 7);
  });

  // Steel in steel, per cent of the press fit, computed apart and rounded: bore, outside, boss in inches.
  it.each([
    [1.25, 1.5, 2.5, 71],
    [1.5, 1.875, 3, 65],
    [2, 2.5, 4, 65],
    [2, 2.5, 3.25, 53],
    [2, 2.75, 5, 60],
    [3, 3.5, 5.5, 73],
  ])(
    '%f × %f in a boss of %f closes in by %i %% of the press fit',
    (inside, seat, outside, told) => {
      printed(100 * pressed(rings(inside, seat, outside, PSI), 1).closesIn, told, 0);
    },
  );
});
