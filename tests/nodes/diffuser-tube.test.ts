import { expect, it } from 'vitest';
import tube from '../../nodes/diffuser-tube.ts';
import { roomOf } from '../../src/lighting/index.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';

it('hands on the tube and knows the room inside', () => {
  const bought = outputsOf(tube, {}, { width: 10, height: 12, wall: 1.5 }).tube;
  expect(bought).toEqual({ width: 10, height: 12, wall: 1.5, leastBend: 15 });
  expect(roomOf(bought)).toEqual({ across: 7, deep: 9 });
});

it('refuses a wall that leaves no room', () => {
  expect(problemsOf(tube, {}, { width: 8, wall: 4 })).toEqual([{ place: 'wall', expected: 'under half the tube\'s 8 mm', found: '4 mm', advice: 'Leave room inside the tube for the strip.' }]);
});
