import { describe, expect, it } from 'vitest';
import { type Region } from '../../../src/geometry/index.ts';
import { type Hole, pinProgram, planRegistration, readProgram, type Registration, type RegistrationRequest, type Stock, type Tiling } from '../../../src/machining/index.ts';
import { EXAMPLE_CUTTER, EXAMPLE_MACHINE } from '../../../src/values/examples.ts';
import { tilingAt } from '../set-ups-fixture.ts';

const stock: Stock = { width: 2400, height: 500, thickness: 10, thicknessTolerance: 0.2, density: 1190, breakthrough: 0.3 };
const rectangle = (minX: number, minY: number, maxX: number, maxY: number): Region =>
  ({ loops: [[{ x: minX, y: minY }, { x: maxX, y: minY }, { x: maxX, y: maxY }, { x: minX, y: maxY }]] });
const board = rectangle(60, 60, 2340, 440);
const EMPTY: Region = { loops: [] };

/** Windows of 900 mm that overlap by 100 mm, whatever the lap: what the machine reaches. */
function reaching(seamsX: readonly number[], seamsY: readonly number[] = [], sheet: Pick<Stock, 'width' | 'height'> = stock): Tiling {
  const tiling = tilingAt(sheet, seamsX, seamsY, 50);
  return tiling;
}

const request = (changes: Partial<RegistrationRequest> = {}): RegistrationRequest => ({
  tiling: reaching([800, 1600]), stock, board, channel: EMPTY, centreLines: [], holes: [], pinDiameter: 6, clearance: 0.02, pitchError: 0.03, wall: 3, cutRoom: 17, kelvin: 10, limit: 0.3, pins: [], ...changes,
});
const planned = (changes: Partial<RegistrationRequest> = {}): Registration => {
  const found = planRegistration(request(changes));
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.registration;
};

describe('three set-ups in a row', () => {
  const { pins, dowels } = planned();
  const { tiles } = request().tiling;

  it('have two pins between them, far apart in the waste above and below the board', () => {
    expect(pins).toHaveLength(2);
    expect(Math.hypot(pins[1]!.at.x - pins[0]!.at.x, pins[1]!.at.y - pins[0]!.at.y)).toBeGreaterThan(400);
    expect(new Set(dowels.map(({ lies }) => lies))).toEqual(new Set(['waste']));
  });

  it('have holes at a pitch equal to the shift, one round, one a slot along the line of the pins', () => {
    for (const { hole: { centre }, pin, usedIn } of dowels) {
      expect(centre.x - tiles[usedIn]!.shift[0]).toBeCloseTo(pins[pin]!.at.x, 9);
      expect(centre.y - tiles[usedIn]!.shift[1]).toBeCloseTo(pins[pin]!.at.y, 9);
    }
    expect(dowels.map(({ hole: { slot } }) => slot !== undefined)).toEqual([false, true, false, true]);
    const [a, b] = pins as [typeof pins[0], typeof pins[0]];
    expect(dowels[1]!.hole.slot!.angle).toBeCloseTo((Math.atan2(b.at.y - a.at.y, b.at.x - a.at.x) * 180) / Math.PI, 9);
    // Growth of acrylic against aluminium over the pin distance in 10 K, and both holes' errors, each way.
    const distance = Math.hypot(b.at.x - a.at.x, b.at.y - a.at.y);
    expect(dowels[1]!.hole.slot!.length).toBeGreaterThanOrEqual(2 * (47e-6 * distance * 10 + 0.06));
  });

  it('are drilled in the set-up before, within its window, and used in theirs', () => {
    expect(dowels.map(({ drilledIn, usedIn }) => [drilledIn, usedIn])).toEqual([[0, 1], [0, 1], [1, 2], [1, 2]]);
    for (const { hole, drilledIn, usedIn } of dowels)
      for (const place of [drilledIn, usedIn]) {
        const { window } = tiles[place]!;
        expect(hole.centre.x).toBeGreaterThan(window.minX - 1e-9);
        expect(hole.centre.x).toBeLessThan(window.maxX + 1e-9);
      }
    expect(dowels.every(({ hole, drilledIn }) => hole.setUp === drilledIn)).toBe(true);
  });
});

it('moves both ways over a sheet larger in both directions', () => {
  const sheet = { width: 1600, height: 1100 };
  const { dowels, steps } = planned({ tiling: reaching([800], [560], sheet), stock: sheet, board: rectangle(80, 80, 1520, 1020) });
  expect(dowels.map(({ drilledIn, usedIn }) => [drilledIn, usedIn])).toEqual([[0, 1], [0, 1], [0, 2], [0, 2], [1, 3], [1, 3]]);
  expect(steps.map(({ seam }) => seam)).toEqual([0, 1]);
});

it('hides a dowel in the groove where there is no waste, and shows it where there is no groove either', () => {
  const whole = rectangle(0, 0, 2400, 500);
  const groove = rectangle(740, 200, 860, 216), other = rectangle(1540, 200, 1660, 216), low = rectangle(740, 30, 860, 46), lower = rectangle(1540, 30, 1660, 46);
  const hidden = planned({ board: whole, channel: { loops: [...groove.loops, ...other.loops, ...low.loops, ...lower.loops] } });
  expect(new Set(hidden.dowels.map(({ lies }) => lies))).toEqual(new Set(['groove']));
  expect(new Set(planned({ board: whole }).dowels.map(({ lies }) => lies))).toEqual(new Set(['board']));
});

it('keeps clear of holes', () => {
  const { pins, dowels } = planned();
  const holes = dowels.map(({ hole }): Hole => ({ ...hole, diameter: 20, purpose: 'mounting' }));
  const moved = planned({ holes });
  expect(moved.pins).not.toEqual(pins);
  for (const { hole } of moved.dowels) for (const { centre } of holes) expect(Math.hypot(hole.centre.x - centre.x, hole.centre.y - centre.y)).toBeGreaterThan(10 + 3 + 3);
});

it('tells the largest step at each seam: shift and turn of one placing, more where errors are', () => {
  const { steps, pins } = planned();
  const distance = Math.hypot(pins[1]!.at.x - pins[0]!.at.x, pins[1]!.at.y - pins[0]!.at.y);
  for (const { worst, likely, at, seam } of steps) {
    const first = { x: pins[0]!.at.x + request().tiling.tiles[seam + 1]!.shift[0], y: pins[0]!.at.y };
    const far = Math.hypot(at.x - first.x, at.y - first.y);
    expect(worst).toBeCloseTo(0.04 + (2 * 0.04 * far) / distance, 9);
    expect(likely).toBeLessThan(worst);
  }
  expect(planned({ pitchError: 0.06 }).steps[0]!.worst).toBeGreaterThan(steps[0]!.worst);
});

it('takes pins put by hand for every set-up', () => {
  const pins = [{ x: 20, y: 30 }, { x: 40, y: 470 }];
  expect(planned({ pins }).pins.map(({ at }) => at)).toEqual(pins);
});

it('says which set-up finds no place for its pins', () => {
  const found = planRegistration(request({ tiling: tilingAt(stock, [800, 1600], [], 3), board: rectangle(0, 0, 2400, 500), pinDiameter: 12 }));
  expect(found).toMatchObject({ ok: false, problems: [{ place: 'set-up 2', found: 'fewer than two' }, { place: 'set-up 3' }] });
});

it('is nothing for a single set-up', () => {
  expect(planned({ tiling: tilingAt(stock, [], []) })).toMatchObject({ pins: [], dowels: [], steps: [] });
});

it('drills the spoilboard\'s holes at the pins, in a program that can be read back', () => {
  const registration = planned();
  const made = pinProgram({ registration, cutter: EXAMPLE_CUTTER, machine: EXAMPLE_MACHINE, depth: 12, name: 'market hall' });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const reading = readProgram(made.program.text);
  expect(reading.ok).toBe(true);
  const bottoms = made.program.moves.filter(({ to }) => to.z === -12).map(({ to: { x, y } }) => `${x.toFixed(2)},${y.toFixed(2)}`);
  expect(new Set(bottoms)).toEqual(new Set(registration.pins.map(({ at }) => `${at.x.toFixed(2)},${at.y.toFixed(2)}`)));
  expect(made.program.text).toMatch(/Z0 is the top face of the\)?\n?\(? ?spoilboard/);
  expect(made.program.text).not.toContain('sheet first');
});
