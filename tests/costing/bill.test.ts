import { describe, expect, it } from 'vitest';
import { billOf, billTable, csvLine, type MaterialRow, totalOf } from '../../src/costing/index.ts';
import type { Lighting } from '../../src/lighting/index.ts';
import { EXAMPLE_CHANNEL, EXAMPLE_LIGHTING, rectangle } from '../../src/values/examples.ts';
import { cutter, stock } from '../support/shapes.ts';

const board = rectangle(10, 10, 500, 200);
const plain = { stock: { ...stock, width: 1000, height: 500, thickness: 10, density: 1200 }, board, channel: undefined, holes: [], lighting: undefined, setups: [], filling: 0.1 };
const rowsOf = (part: MaterialRow['part'], sign = plain as Parameters<typeof billOf>[0]) => billOf(sign).rows.filter((row) => row.part === part);

describe('a bill of materials', () => {
  it('takes the sheet as a whole, and tells what of it becomes the board, is waste and weighs', () => {
    // By hand: 1 m x 0.5 m, of it 0.5 m x 0.2 m; 0.5 m2 x 10 mm x 1200 kg/m3.
    expect(rowsOf('sheet').map(({ quantity, unit, counts }) => [quantity, unit, counts])).toEqual([
      [0.5, 'm2', true], [0.1, 'm2', false], [0.4, 'm2', false], [0.2, 'ratio', false], [6, 'kg', false],
    ]);
    expect(rowsOf('sign')).toMatchObject([{ quantity: 1.2, unit: 'kg' }]);
  });

  it('leaves out what is not wired in', () => {
    expect(new Set(billOf(plain).rows.map(({ part }) => part))).toEqual(new Set(['sheet', 'sign']));
  });

  const size = { name: '0.5 mm²', area: 0.5, ohmsPerKm: 39, ampacity: 3 };
  const wire = { run: 0, place: 0, from: { x: 0, y: 0 }, to: { x: 0, y: 0 }, size, amps: 1, drop: 0.1 };
  const supply = { at: { x: 0, y: 0 }, watts: 40, amps: 2, runs: [0] };
  const lighting: Lighting = {
    ...EXAMPLE_LIGHTING, runs: [EXAMPLE_LIGHTING.runs[0]!, EXAMPLE_LIGHTING.runs[0]!],
    wiring: {
      drops: [0, 0], supplies: [{ ...supply, ratedWatts: 60, fuse: 3 }, { ...supply, ratedWatts: 60, fuse: 2 }],
      wires: [{ ...wire, kind: 'feed', length: 2000 }, { ...wire, kind: 'feed', length: 500 }, { ...wire, kind: 'jumper', length: 300 }],
    },
  };
  const lit = { ...plain, channel: EXAMPLE_CHANNEL, lighting };

  it('counts strip run by run in whole modules, tube, wire by use and size, supplies and fuses', () => {
    // By hand: two runs of four modules of 50 mm in tubes of 200 mm; wire 2 + 0.5 and 0.3 m.
    expect(rowsOf('strip', lit).map(({ quantity }) => quantity)).toEqual([0.2, 0.2]);
    expect(rowsOf('strip', lit)[1]!.item).toContain('run 2: 4 modules of 50 mm in 1 piece');
    expect(rowsOf('tube', lit)).toMatchObject([{ quantity: 0.4, unit: 'm' }]);
    expect(rowsOf('wire', lit).map(({ quantity }) => quantity)).toEqual([2.5, 0.3]);
    expect(rowsOf('supply', lit)).toMatchObject([{ quantity: 2 }]);
    expect(rowsOf('fuse', lit).map(({ item, quantity }) => [item, quantity])).toEqual([['Fuse 3 A', 1], ['Fuse 2 A', 1]]);
    // 1.2 kg less a groove of 210 x 10 x 6 mm, with 0.1 kg/m in 210 mm of it.
    expect(rowsOf('sign', lit)[0]!.quantity).toBeCloseTo(1.2 - 0.21 * 0.01 * 0.006 * 1200 + 0.021, 3);
  });

  it('counts a fixing for every mounting hole, and the minutes of the machine once', () => {
    const hole = (purpose: 'mounting' | 'cable', diameter: number) => ({ centre: { x: 20 + diameter, y: 20 }, diameter, purpose });
    const program = (minutes: number, name: string) => ({
      file: name, cutter: { ...cutter, name }, kinds: [], moves: [], text: '', reach: { min: { x: 0, y: 0, z: 0 }, max: { x: 0, y: 0, z: 0 } }, minutes, cuttingMinutes: 0, seconds: [], spindleStart: 0, blocks: 1,
    });
    const sign = { ...plain, holes: [hole('mounting', 6), hole('cable', 8), hole('mounting', 6)], setups: [{ name: 'a', shift: [0, 0] as const, programs: [program(10.04, 'thin'), program(5, 'broad')] }] };
    expect(rowsOf('fixing', sign)).toMatchObject([{ item: 'Fixing for a 6 mm hole', quantity: 2 }]);
    expect(rowsOf('cutter', sign).map(({ quantity, counts }) => [quantity, counts])).toEqual([[10, false], [5, false]]);
    expect(totalOf(billOf(sign), 'machine')).toBe(15);
  });
});

describe('its table', () => {
  // RFC 4180, section 2: lines end in CR LF (1), cells with commas, quotes or line ends are quoted (6), quotes in them are doubled (7).
  it('is written by RFC 4180', () => {
    expect(csvLine(['a', 'b,c', 'say "x"', 'two\nlines', 1.5])).toBe('a,"b,c","say ""x""","two\nlines",1.5\r\n');
  });

  it('holds no formula: text that a table would reckon with stays text, numbers stay numbers', () => {
    expect(csvLine(['=1+1', '+2', '-3', '@x', '\tq', -3])).toBe("'=1+1,'+2,'-3,'@x,'\tq,-3\r\n");
  });

  it('has a head and a row for each part, with its unit in a column', () => {
    const lines = billTable(billOf(plain)).split('\r\n');
    expect(lines).toHaveLength(billOf(plain).rows.length + 2);
    expect(lines.slice(0, 2)).toEqual(['part,item,quantity,unit,counts', 'sheet,Sheet 1000 x 500 x 10 mm,0.5,m2,yes']);
  });
});
