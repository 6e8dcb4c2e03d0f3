import { expect, it } from 'vitest';
import tileStock from '../../nodes/tile-stock.ts';
import { outputsOf } from '../support/run-node.ts';
import { channelOf, cutter, line, machine, rectangle, stock } from '../support/shapes.ts';

const sheet = { ...stock, width: 2400, height: 500 };
const board = rectangle(50, 50, 2300, 400);
const strokes = [line([100, 250], [2300, 250])];
const channel = channelOf(rectangle(95, 245, 2210, 10), ...strokes);
const base = { machine: { ...machine, travelX: 900, travelY: 600 }, cutters: [cutter], board, channel, holes: [] };

it('leaves a sheet that fits in one set-up that covers all of it', () => {
  const { tiling } = outputsOf(tileStock, { ...base, stock: { ...sheet, width: 800 }, board: rectangle(50, 50, 700, 400), channel: undefined });
  const whole = { minX: 0, minY: 0, maxX: 800, maxY: 500 };
  expect(tiling).toMatchObject({ seams: [], tiles: [{ name: 'set-up 1', core: whole, window: whole, shift: [0, 0] }] });
});

it('cuts 2.4 m on 0.9 m of travel in three set-ups', () => {
  const { tiling, quantities, checks } = outputsOf(tileStock, { ...base, stock: sheet });
  expect(tiling.tiles).toHaveLength(3);
  expect(quantities).toMatchObject({ setUps: { value: 3 }, setUpsLeast: { value: 3 }, seams: { value: 2 }, seamCrossings: { value: 2 } });
  expect(checks.map(({ status }) => status)).not.toContain('fail');
});
