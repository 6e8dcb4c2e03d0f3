import { expect, it } from 'vitest';
import allowForMovement from '../../nodes/allow-for-movement.ts';
import { asWideHole, type Hole, movementAt, sparePlay } from '../../src/machining/index.ts';
import { outputsOf } from '../support/run-node.ts';

const hole = (x: number, y: number, diameter = 4): Hole => ({ centre: { x, y }, diameter, purpose: 'mounting' });
const row = [hole(0, 0), hole(1000, 0), hole(2000, 500)];
const cable: Hole = { centre: { x: 10, y: 10 }, diameter: 8, purpose: 'cable' };

// REFERENCES sections 4 and 6: 7e-5 /K (UFC 4-159-01; ISO 11359-2).
it('reckons 1.75 mm each way for 1000 mm and 25 K: a 4 mm screw needs a hole of 7.5 mm; 6.72 mm in all for 2400 mm and 40 K', () => {
  expect(movementAt(1000, 25)).toBeCloseTo(1.75, 9);
  expect(asWideHole(hole(1000, 0), { x: 0, y: 0 }, { screw: 4, kelvin: 25 }).diameter).toBeCloseTo(7.5, 9);
  expect(movementAt(2400, 40)).toBeCloseTo(6.72, 9);
});

// FAA AC 43.13-1B 3-27 f (from memory): 1/8 in oversize covers 25 K up to 907.14 mm from the fixed point.
it('finds that holes 3.175 mm oversize cover 25 K up to 907.14 mm', () => {
  const spare = (x: number) => sparePlay(hole(x, 0, 4 + 3.175), { x: 0, y: 0 }, { screw: 4, kelvin: 25 });
  expect(spare(907.1)).toBeGreaterThan(0);
  expect(spare(907.2)).toBeLessThan(0);
});

it('keeps the hole in the middle, and makes slots of the others that point at it', () => {
  const { holes, checks, quantities } = outputsOf(allowForMovement, { holes: [row, [cable]] });
  expect([holes[1], holes[3]]).toEqual([row[1], cable]);
  expect(holes[0]!.slot).toEqual({ length: 3.5, angle: 0 });
  expect(holes[2]!.slot!.angle).toBeCloseTo((Math.atan2(-500, -1000) * 180) / Math.PI, 9);
  expect(checks[0]).toMatchObject({ check: 'thermal-play', status: 'pass' });
  expect(quantities.largestMovement!.value).toBeCloseTo(7e-5 * 25 * Math.hypot(1000, 500), 9);
});

it('warns of holes left as they are, and widens them by choice', () => {
  expect(outputsOf(allowForMovement, { holes: [row] }, { make: 'no change' }).checks[0]).toMatchObject({ status: 'caution' });
  const wide = outputsOf(allowForMovement, { holes: [row] }, { make: 'larger holes' });
  expect(wide.holes.map(({ diameter }) => diameter)).toEqual([7.5, 4, expect.closeTo(8, 0) as number]);
  expect(wide.checks[0]).toMatchObject({ status: 'pass' });
});

it('fixes the hole that is asked for', () => {
  expect(outputsOf(allowForMovement, { holes: [row] }, { fixed: [{ x: -50, y: 20 }] }).holes[0]).toEqual(row[0]);
});

it('is the same mirrored, and does nothing without mounting holes', () => {
  const mirrored = row.map((one) => ({ ...one, centre: { x: -one.centre.x, y: one.centre.y } }));
  const lengths = (holes: readonly Hole[]) => outputsOf(allowForMovement, { holes: [holes] }).holes.map(({ slot }) => slot?.length);
  expect(lengths(mirrored)).toEqual(lengths(row));
  expect(outputsOf(allowForMovement, { holes: [[cable]] })).toEqual({ holes: [cable], checks: [], quantities: {} });
});
