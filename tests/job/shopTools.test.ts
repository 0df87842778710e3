/** What the shop has to work with: tools, machines and sheets put at hand and taken away. */
import { describe, expect, it } from 'vitest';
import { NO_SHOP } from '../../src/job/shopGauges.ts';
import { withMachine, withSheets, withTool } from '../../src/job/shopTools.ts';

describe('tools and machines', () => {
  it('are at hand once each, and gone when taken away', () => {
    const once = withTool(null, 'drum', true);
    expect(once.tools).toEqual([{ id: 'drum', name: 'sanding drum', kind: 'drum' }]);
    expect(withTool(once, 'drum', true)).toBe(once);
    expect(withTool(once, 'drum', false)).toEqual(NO_SHOP);
    const lathe = withMachine(withMachine(null, 'lathe', true), 'lathe', true);
    expect(lathe.machines).toEqual(['lathe']);
    // Said, and none: not the same as nothing said.
    expect(withMachine(lathe, 'lathe', false).machines).toEqual([]);
    expect(NO_SHOP.machines).toBeUndefined();
  });
});

describe('sheets', () => {
  const sheets = (text: string, unit: 'in' | 'mm') => {
    const tried = withSheets(null, text, unit);
    return 'why' in tried ? tried.why : tried.shop.stock.map(({ thickness }) => thickness.text);
  };

  it('are read from a row, with spaces, semicolons or commas between', () => {
    expect(sheets('0.005 0.010', 'in')).toEqual(['0.005', '0.010']);
    expect(sheets('0.005, 0.010,  .02', 'in')).toEqual(['0.005', '0.010', '.02']);
    // DIN 988 as a German hand writes it.
    expect(sheets('0,1; 0,15; 0,2', 'mm')).toEqual(['0,1', '0,15', '0,2']);
    expect(sheets('  ', 'mm')).toEqual([]);
  });

  it('keep the names that they had, and nothing changes where one is none', () => {
    const old = { id: 'k', name: 'Brass', thickness: { text: '0.2', unit: 'mm' as const } };
    const tried = withSheets({ ...NO_SHOP, stock: [old] }, '0.20 0.5', 'mm');
    expect('shop' in tried && tried.shop.stock.map(({ name }) => name)).toEqual(['Brass', 'sheet']);
    expect(sheets('0.2 thick', 'mm')).toContain('“thick” is no thickness');
    expect(sheets('0', 'mm')).toContain('is no thickness');
  });
});
