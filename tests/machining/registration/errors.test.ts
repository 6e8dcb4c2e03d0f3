import { expect, it } from 'vitest';
import { accumulatedLikely, accumulatedWorst, displaceMoves, farError, measuredPins, pinAngle, pitchGrowth, replaceMoves, type Move } from '../../../src/machining/index.ts';

/** Rows of the references' section on locating on dowel pins: from memory (Slocum, Precision Machine Design, 1992) but for the expansion. */

it('turns by error over pin distance: 0.05 mm over 600 mm is 0.0047746 degrees', () => {
  expect(pinAngle(0.05, 600)).toBeCloseTo(8.3333e-5, 9);
  expect((pinAngle(0.05, 600) * 180) / Math.PI).toBeCloseTo(0.0047746, 7);
});

it('is off by that angle times the distance: 0.11667 mm at 1400 mm, 0.056 with a clearance of 0.024', () => {
  expect(farError(0.05, 600, 1400)).toBeCloseTo(0.11667, 5);
  expect(2 * farError(0.05, 600, 1400)).toBeCloseTo(0.23333, 5);
  // 6 H7/g6 (ISO 286-2): +12/0 and -4/-12 micrometres, 24 at most.
  expect(farError(0.024, 600, 1400)).toBeCloseTo(0.056, 6);
});

it('lets the sheet grow 0.282 mm more than an aluminium bed over 600 mm and 10 K: a slot is needed', () => {
  expect(pitchGrowth(600, 10)).toBeCloseTo(0.282, 6);
});

it('adds up over two moves of 700 mm to 0.175 mm at worst, 0.13044 likely', () => {
  const angle = pinAngle(0.05, 600);
  expect(accumulatedWorst(angle, 700, 2)).toBeCloseTo(0.175, 4);
  expect(accumulatedLikely(angle, 700, 2)).toBeCloseTo(0.13044, 4);
});

const NOMINAL = [{ x: 0, y: 0 }, { x: 600, y: 0 }] as const;

it('finds rotation 1.1666e-4 rad, shift (0.035, 0.005) of the middle and misfit 0.03 mm from measured pins', () => {
  const { degrees, shift: [dx, dy], misfit } = measuredPins(NOMINAL, [{ x: 0.02, y: -0.03 }, { x: 600.05, y: 0.04 }]);
  const angle = (degrees * Math.PI) / 180;
  expect(angle).toBeCloseTo(1.1666e-4, 8);
  expect([300 * Math.cos(angle) + dx - 300, 300 * Math.sin(angle) + dy]).toEqual([expect.closeTo(0.035, 6), expect.closeTo(0.005, 6)]);
  expect(misfit).toBeCloseTo(0.03, 5);
});

it.each([0, 0.3, -2, 91, 179.5])('brings moves to where the pins were found, and back, for a turn of %d degrees', (turn) => {
  const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const real = ({ x, y }: { x: number; y: number }) => ({ x: c * x - s * y + 3, y: s * x + c * y - 7 });
  const found = measuredPins([{ x: 40, y: 20 }, { x: 60, y: 480 }], [real({ x: 40, y: 20 }), real({ x: 60, y: 480 })]);
  expect(found.misfit).toBeCloseTo(0, 9);
  const moves: Move[] = [{ kind: 'line', to: { x: 5, y: 9, z: -1 }, feed: 100 }, { kind: 'arc', to: { x: 9, y: 5, z: -2 }, centre: { x: 5, y: 5 }, clockwise: true, feed: 100 }];
  const moved = displaceMoves(moves, found);
  const { x, y } = real({ x: 5, y: 9 });
  expect(moved[0]!.to).toEqual({ x: expect.closeTo(x, 9) as number, y: expect.closeTo(y, 9) as number, z: -1 });
  const back = replaceMoves(moved, found);
  expect(JSON.parse(JSON.stringify(back, (_key, value: unknown) => (typeof value === 'number' ? Math.round(value * 1e9) / 1e9 : value)))).toEqual(moves);
});
