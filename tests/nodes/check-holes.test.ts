import { expect, it } from 'vitest';
import checkHoles from '../../nodes/check-holes.ts';
import { outputsOf } from '../support/run-node.ts';
import { channelOf, rectangle } from '../support/shapes.ts';

const board = rectangle(0, 0, 300, 100);
const channel = channelOf(rectangle(100, 45, 100, 10));
type Hole = { centre: { x: number; y: number }; diameter: number; purpose: 'mounting' | 'cable' };
const hole = (x: number, y: number, diameter: number, purpose: Hole['purpose'] = 'mounting'): Hole => ({ centre: { x, y }, diameter, purpose });
const checksOf = (...holes: Hole[]) =>
  Object.fromEntries(outputsOf(checkHoles, { holes: [holes], board, channel }).checks.map(({ check, status, value }) => [check, [status, Math.round(value * 1000) / 1000]]));

// Edge distance 2 d, never under 1.5 d: common practice, no source.
it('measures edge distance in hole diameters', () => {
  expect(checksOf(hole(15, 50, 7.5))['hole-to-edge']).toEqual(['pass', 2]);
  expect(checksOf(hole(12, 50, 7.5))['hole-to-edge']).toEqual(['caution', 1.6]);
  expect(checksOf(hole(11, 50, 7.5))['hole-to-edge']).toEqual(['fail', 1.467]);
  expect(checksOf(hole(-5, 50, 7.5))['hole-to-edge']).toEqual(['fail', -0.667]);
});

it('keeps mounting holes clear of the groove', () => {
  expect(checksOf(hole(150, 63, 6))['hole-to-groove']).toEqual(['pass', 5]);
  expect(checksOf(hole(150, 60, 6))['hole-to-groove']).toEqual(['fail', 2]);
  expect(checksOf(hole(150, 50, 6))['hole-to-groove']).toEqual(['fail', -8]);
});

it('keeps cable holes inside the groove', () => {
  expect(checksOf(hole(150, 50, 10, 'cable'))['cable-hole-in-groove']).toEqual(['pass', 0]);
  expect(checksOf(hole(150, 50, 11, 'cable'))['cable-hole-in-groove']).toEqual(['fail', -0.5]);
  expect(checksOf(hole(150, 80, 4, 'cable'))['cable-hole-in-groove']).toEqual(['fail', -27]);
});

it('measures between holes and says nothing of a lone one', () => {
  expect(checksOf(hole(20, 20, 6), hole(30, 20, 6))['hole-to-hole']).toEqual(['caution', 4]);
  expect(checksOf(hole(20, 20, 6))['hole-to-hole']).toBeUndefined();
});

it('has nothing to say without holes', () => expect(checksOf()).toEqual({}));
