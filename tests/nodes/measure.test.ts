import { expect, it } from 'vitest';
import measure from '../../nodes/measure.ts';
import { outputsOf } from '../support/run-node.ts';
import { channelOf, line, rectangle, stock } from '../support/shapes.ts';

const board = rectangle(0, 0, 2400, 600);
const sheet = { ...stock, width: 2400, height: 600 };
const groove = { ...channelOf(rectangle(0, 100, 8000, 9), line([0, 104.5], [8000, 104.5])), width: 9, depth: 6 };

// Density of cast acrylic 1190 kg/m3: US Unified Facilities Criteria 4-159-01, Table 3-1 (ASTM D792); weights by arithmetic.
it('weighs a plain board, and one with 8 m of 9 x 6 mm groove', () => {
  const weight = (channel: typeof groove) => outputsOf(measure, { channel, board, holes: [], stock: sheet }).quantities.boardWeight!.value;
  expect(weight({ ...groove, region: { loops: [] } })).toBeCloseTo(20.563, 3);
  expect(weight(groove)).toBeCloseTo(20.049, 3);
});

it('states lengths, areas and counts in mm', () => {
  const holes = [[{ centre: { x: 50, y: 50 }, diameter: 10, purpose: 'mounting' as const }]];
  expect(outputsOf(measure, { channel: groove, board, holes, stock: sheet }).quantities).toMatchObject({
    strokes: { value: 1, unit: 'count' }, strokeLength: { value: 8000, unit: 'mm' }, grooveArea: { value: 72000, unit: 'mm2' },
    grooveVolume: { value: 432000, unit: 'mm3' }, boardArea: { value: 1.44e6 }, outlineLength: { value: 6000 }, holes: { value: 1 }, sheetUsed: { value: 1, unit: 'ratio' },
  });
});

it('takes what the holes weigh off the board', () => {
  const weight = (diameter: number) => outputsOf(measure, {
    channel: groove, board, holes: [[{ centre: { x: 50, y: 50 }, diameter, purpose: 'mounting' as const }]], stock: sheet,
  }).quantities.boardWeight!.value;
  expect(weight(20) - weight(100)).toBeCloseTo((Math.PI / 4) * (100 ** 2 - 20 ** 2) * 12 * 1190e-9, 9);
});
