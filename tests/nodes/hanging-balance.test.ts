import { expect, it } from 'vitest';
import hangingBalance from '../../nodes/hanging-balance.ts';
import { makeRegionIndex } from '../../src/geometry/index.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { channelOf, rectangle, stock } from '../support/shapes.ts';

const board = rectangle(0, 0, 1000, 300);
const inputs = { board, channel: undefined, holes: [], stock };
const statusOf = (...places: { x: number; y: number }[]) =>
  Object.fromEntries(outputsOf(hangingBalance, inputs, { hangBy: 'by hand', places }).checks.map(({ check, status }) => [check, status]));
const mounting = (x: number, y: number) => ({ centre: { x, y }, diameter: 6, purpose: 'mounting' as const });

// Density 1190 kg/m3 (US Unified Facilities Criteria 4-159-01 table 3-1) and standard gravity 9.80665 m/s2 (ISO 80000-3); the rest is arithmetic.
it('hangs a plain board by two hangers that carry half each', () => {
  const { holes, quantities } = outputsOf(hangingBalance, inputs, { safety: 5 });
  expect(holes.map(({ centre }) => centre)).toEqual([{ x: 250, y: 285 }, { x: 750, y: 285 }]);
  expect(quantities.hungWeight!.value).toBeCloseTo(1 * 0.3 * 0.012 * 1190, 9);
  expect(quantities.hanger1Load!.value).toBeCloseTo((4.284 * 9.80665) / 2, 9);
  expect(quantities.designFixingLoad!.value).toBeCloseTo((4.284 * 9.80665 * 5) / 2, 9);
});

it('keeps the pair even about the centre of mass, clear of groove and holes', () => {
  const channel = channelOf(rectangle(150, 100, 400, 190));
  const { holes, quantities } = outputsOf(hangingBalance, { ...inputs, channel, holes: [[mounting(800, 285)]] });
  const [a, b] = holes.map(({ centre }) => centre);
  expect((a!.x + b!.x) / 2).toBeCloseTo(quantities.centreOfMassX!.value, 9);
  expect(a!.y).toBe(b!.y);
  const walls = makeRegionIndex(channel.region);
  for (const { x, y } of [a!, b!]) {
    expect(walls.contains({ x, y })).toBe(false);
    expect(walls.distanceToBoundary({ x, y })).toBeGreaterThan(11 - 0.03);
    expect(Math.hypot(x - 800, y - 285)).toBeGreaterThan(14 - 0.03);
  }
});

it('loads hangers put by hand by the lever rule, and judges them', () => {
  const { quantities, checks } = outputsOf(hangingBalance, inputs, { hangBy: 'by hand', places: [{ x: 400, y: 280 }, { x: 900, y: 280 }] });
  expect(quantities.hanger1Load!.value / quantities.hanger2Load!.value).toBeCloseTo(4, 9);
  expect(checks.map(({ status }) => status)).toEqual(['pass', 'pass', 'pass', 'caution']);
  expect(statusOf({ x: 600, y: 280 }, { x: 900, y: 200 })).toMatchObject({ 'weight-between-fixings': 'fail', 'hangers-level': 'caution', 'hangers-above-centre': 'pass' });
  expect(statusOf({ x: 100, y: 100 }, { x: 900, y: 100 })).toMatchObject({ 'weight-between-fixings': 'pass', 'hangers-above-centre': 'caution' });
});

it('holds the design load against what a fixing bears', () => {
  const check = (rated: number) => outputsOf(hangingBalance, inputs, { rated }).checks.find((one) => one.check === 'fixing-load')!;
  expect(check(85)).toMatchObject({ status: 'pass', value: expect.closeTo(4.284 * 9.80665 * 2, 9) as number });
  expect(check(84)).toMatchObject({ status: 'caution', says: expect.stringContaining('licensed person') as string });
});

it('hangs by the mounting holes it is given, makes no new ones, and tells least and greatest load', () => {
  const holes = [[mounting(100, 20), mounting(500, 280), mounting(900, 20), { centre: { x: 500, y: 150 }, diameter: 6, purpose: 'cable' as const }]];
  const found = outputsOf(hangingBalance, { ...inputs, holes }, { hangBy: 'mounting holes' });
  expect(found.holes).toEqual([]);
  expect(found.quantities).toMatchObject({ fixings: { value: 3 }, leastFixingLoad: { unit: 'N' } });
  expect(found.quantities.hanger1Load).toBeUndefined();
});

it('says so when there is nothing to hang, or nothing to hang it by', () => {
  expect(problemsOf(hangingBalance, { ...inputs, board: { loops: [] } })[0]).toMatchObject({ found: 'none', expected: 'a board that weighs something' });
  expect(problemsOf(hangingBalance, inputs, { hangBy: 'mounting holes' })[0]).toMatchObject({ place: 'hangBy' });
  expect(problemsOf(hangingBalance, inputs, { hangBy: 'by hand' })[0]).toMatchObject({ place: 'places' });
  expect(problemsOf(hangingBalance, inputs, { edgeDistance: 200 })[0]).toMatchObject({ place: 'edgeDistance' });
});
