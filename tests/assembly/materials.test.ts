/** The table of metals, against published figures, and as the free texts of a job name it. */
import { describe, expect, it } from 'vitest';
import { METALS, metalNamed } from '../../src/assembly/materials.ts';
import { METAL_NAMES, metalOf } from '../../src/job/temperature.ts';

describe('the table of metals', () => {
  // SDP/SI and Callister, appendix B: modulus in GPa, least and most of what the name covers; Poisson's ratio.
  it.each([
    ['plain steel', 200, 210, 0.29, 0.3],
    ['hardened bearing steel', 203, 210, 0.29, 0.3],
    ['alloy steel', 203, 207, 0.29, 0.3],
    ['cast iron', 90, 130, 0.26, 0.26],
    ['ductile iron', 164, 172, 0.27, 0.29],
    ['bronze', 100, 110, 0.34, 0.34],
    ['brass', 97, 110, 0.34, 0.35],
    ['aluminium', 69, 73, 0.33, 0.33],
    ['stainless steel', 193, 200, 0.29, 0.3],
  ])('%s is as stiff as published', (name, least, most, low, high) => {
    const { elastic, poisson } = metalNamed(name);
    expect(elastic / 1000).toBeGreaterThanOrEqual(least);
    expect(elastic / 1000).toBeLessThanOrEqual(most);
    expect(poisson).toBeGreaterThanOrEqual(low);
    expect(poisson).toBeLessThanOrEqual(high);
  });

  // Heat and mass transfer data book; Incropera and DeWitt, table A.1: thermal diffusivity, 1e-6 m2/s, as printed.
  it.each([
    ['plain steel', 14.74],
    ['cast iron', 17.03],
    ['bronze', 17],
    ['brass', 33.9],
    ['aluminium', 73],
    ['stainless steel', 3.95],
  ])('%s carries heat as printed', (name, printed) => {
    const { conductivity, density, heat } = metalNamed(name);
    // The tables round their three figures and the quotient of them each by itself: within 2 in the third digit.
    expect(Math.abs((1e6 * conductivity) / (density * heat) / printed - 1)).toBeLessThan(0.02);
  });

  it('names a source of every figure', () => {
    for (const { sources } of METALS) {
      expect(Object.values(sources)).toHaveLength(8);
      for (const source of Object.values(sources)) expect(source).toMatch(/[A-Za-z]{2}/);
    }
  });

  it('has every metal that the temperature of a part is reckoned with, with the same expansion', () => {
    expect(METALS.map(({ name }) => name).toSorted()).toEqual([...METAL_NAMES].toSorted());
    for (const { name, expansion } of METALS) expect(metalOf(name).expansion).toBe(expansion);
  });

  it.each([
    ['Hardened steel', 'hardened bearing steel'],
    ['100Cr6', 'hardened bearing steel'],
    ['Plain steel, forged', 'plain steel'],
    ['grey iron', 'cast iron'],
    ['SG iron, nodular', 'ductile iron'],
    ['C932 bearing bronze', 'bronze'],
    ['manganese bronze', 'bronze'],
    ['aluminum 6061', 'aluminium'],
    ['AISI 304', 'stainless steel'],
    ['4140', 'alloy steel'],
    ['hardened 4140', 'alloy steel'],
    ['oak', 'plain steel'],
    ['', 'plain steel'],
  ])('understands “%s”', (text, name) => {
    expect(metalOf(text).name).toBe(name);
  });
});
