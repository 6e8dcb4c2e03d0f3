import { expect, it } from 'vitest';
import checkWalls from '../../nodes/check-walls.ts';
import setWidth from '../../nodes/set-width.ts';
import type { Path } from '../../src/geometry/index.ts';
import { outputsOf } from '../support/run-node.ts';
import { circle, line, rectangle, stock } from '../support/shapes.ts';

const board = rectangle(50, 50, 500, 200);
function checksOf(paths: readonly Path[], depth = 6) {
  const { channel } = outputsOf(setWidth, { strokes: paths.map((path) => ({ path })) }, { width: 10, depth });
  return Object.fromEntries(outputsOf(checkWalls, { channel, board, stock }).checks.map((check) => [check.check, check]));
}

it('measures the wall between two parallel grooves', () => {
  const wall = (apart: number) => checksOf([line([100, 100], [300, 100]), line([100, 100 + apart], [300, 100 + apart])])['wall-between-grooves'];
  expect(wall(12.5)).toMatchObject({ status: 'fail', value: 2.5, limit: 3 });
  expect(wall(14)).toMatchObject({ status: 'caution', limit: 5 });
  expect(wall(15.5)).toMatchObject({ status: 'pass' });
});

it('sees no wall where grooves cross, meet, or merge', () => {
  const crossing = [line([100, 100], [300, 150]), line([100, 150], [300, 100])];
  const meeting = [line([100, 200], [300, 200]), line([200, 120], [200, 200])];
  expect(checksOf(crossing)['wall-between-grooves']).toBeUndefined();
  expect(checksOf(meeting)['wall-between-grooves']).toBeUndefined();
});

it('sees the wall between the legs of one stroke that turns back', () => {
  const hairpin: Path = {
    start: { x: 100, y: 100 },
    segments: [{ kind: 'line', end: { x: 200, y: 100 } }, { kind: 'arc', end: { x: 200, y: 113 }, centre: { x: 200, y: 106.5 }, clockwise: false }, { kind: 'line', end: { x: 100, y: 113 } }],
    closed: false,
  };
  expect(checksOf([hairpin])['wall-between-grooves']!.value).toBeCloseTo(3, 1);
});

it('does not take the inside of a ring for a wall', () => {
  expect(checksOf([circle(200, 150, 20)])['wall-between-grooves']).toBeUndefined();
});

it('measures the edge, negative where a groove sticks out', () => {
  expect(checksOf([line([100, 59], [300, 59])])['wall-to-edge']).toMatchObject({ status: 'caution', value: expect.closeTo(4, 6) as number });
  expect(checksOf([line([100, 52], [300, 52])])['wall-to-edge']).toMatchObject({ status: 'fail', value: expect.closeTo(-3, 2) as number });
});

// Groove depth must not be taken from the underside: ISO 7823-1 allows a cast sheet +-(0.4 + 0.1 t) as quoted by its users.
it('states the floor at the thinnest sheet', () => {
  expect(checksOf([line([100, 100], [300, 100])], 6).floor).toMatchObject({ status: 'pass', value: expect.closeTo(5.8, 9) as number });
  expect(checksOf([line([100, 100], [300, 100])], 9).floor).toMatchObject({ status: 'fail' });
});

it('fails a board that sticks out of its sheet', () => {
  const { channel } = outputsOf(setWidth, { strokes: [{ path: line([100, 100], [300, 100]) }] });
  const check = (x: number) => outputsOf(checkWalls, { channel, board: rectangle(x, 50, 500, 200), stock }).checks.find(({ check: name }) => name === 'board-on-sheet');
  expect(check(0)).toMatchObject({ status: 'pass', value: 0 });
  expect(check(101)).toMatchObject({ status: 'fail', value: -1 });
});
