import { expect, it } from 'vitest';
import nestSigns from '../../nodes/nest-signs.ts';
import { regionArea, regionBounds } from '../../src/geometry/index.ts';
import { rectangle } from '../../src/values/examples.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { channelOf, stock } from '../support/shapes.ts';

const sheet = { ...stock, width: 1000, height: 600 };
const hole = { centre: { x: 10, y: 10 }, diameter: 6, purpose: 'mounting' as const };
const inputs = { boards: [rectangle(0, 0, 300, 100)], channels: [channelOf(rectangle(50, 40, 200, 10))], holes: [[hole]], stock: sheet };

it('makes one work of several copies, and tells how much of the sheet they use', () => {
  const { board, channel, holes, checks, quantities } = outputsOf(nestSigns, inputs, { copies: 6 });
  expect([board.loops.length, channel.region.loops.length, holes.length]).toEqual([6, 6, 6]);
  expect(checks).toMatchObject([{ check: 'signs-without-room', status: 'pass' }]);
  expect(quantities['nestOfSheet']!.value).toBeCloseTo((6 * 300 * 100) / (1000 * 600), 6);
  expect(quantities['nestHeightBound']!.value).toBeCloseTo(180, 6);
  expect(quantities['nestUse']!.value).toBeCloseTo(180 / quantities['nestHeight']!.value, 9);
  expect(regionBounds(board)!.minX).toBeCloseTo(15, 6);
});

it('fails the check by the number of signs left, and says which', () => {
  const { checks, board } = outputsOf(nestSigns, { ...inputs, boards: [rectangle(0, 0, 1100, 100), rectangle(0, 0, 200, 100)], channels: [], holes: [] });
  expect(checks).toMatchObject([{ status: 'fail', value: 1, says: expect.stringContaining('board 1') as string }]);
  expect(regionArea(board)).toBeCloseTo(20_000, 6);
});

it('refuses what it cannot lay, by what is wrong', () => {
  const place = (more: object) => problemsOf(nestSigns, { ...inputs, ...more })[0]!.place;
  expect(place({ boards: [] })).toBe('boards');
  expect(place({ boards: [{ loops: [] }] })).toBe('boards');
  expect(place({ holes: [[hole], [hole]] })).toBe('holes');
  expect(place({ boards: [...inputs.boards, ...inputs.boards], channels: [inputs.channels[0]!, { ...inputs.channels[0]!, width: 11 }] })).toBe('channels');
  expect(place({ stock: { ...sheet, width: 200, height: 200 } })).toBe('stock');
});
