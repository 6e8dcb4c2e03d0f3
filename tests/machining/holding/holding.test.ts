import { describe, expect, it } from 'vitest';
import { type Region } from '../../../src/geometry/index.ts';
import { type HoldDown, type HoldDownRequest, holdDownGaps, type Move, partedPieces, planHoldDowns, type SetUp } from '../../../src/machining/index.ts';
import { EXAMPLE_CUTTER } from '../../../src/values/examples.ts';
import { tilingAt } from '../set-ups-fixture.ts';

const rectangle = (minX: number, minY: number, maxX: number, maxY: number): Region =>
  ({ loops: [[{ x: minX, y: minY }, { x: maxX, y: minY }, { x: maxX, y: maxY }, { x: minX, y: maxY }]] });
const stock = { width: 1600, height: 500 };
const board = rectangle(60, 60, 1540, 440);
const request = (changes: Partial<HoldDownRequest> = {}): HoldDownRequest => ({
  stock, tiling: tilingAt(stock, [800], []), bed: { minX: -20, minY: -20, maxX: 860, maxY: 560 }, board, holes: [], kind: 'screw', keepOut: 20, height: 6, pitch: 300, cutRoom: 17, ...changes,
});

describe('planned hold-downs', () => {
  const planned = planHoldDowns(request());

  it('stand in the waste, clear of the cutter\'s way and on the bed of their set-up', () => {
    expect(planned.length).toBeGreaterThanOrEqual(8);
    for (const { at: { x, y }, setUps } of planned) {
      expect(x < 60 - 27 || x > 1540 + 27 || y < 60 - 27 || y > 440 + 27, `${x}, ${y}`).toBe(true);
      const shift = setUps![0] === 0 ? 0 : 794;
      expect(x - shift >= -10 && x - shift <= 850, `${x} in set-up ${setUps![0]! + 1}`).toBe(true);
    }
  });

  it('are nowhere farther apart than the pitch, and at least four in a set-up', () => {
    for (const setUp of [0, 1]) {
      const own = planned.filter(({ setUps }) => setUps![0] === setUp);
      expect(own.length).toBeGreaterThanOrEqual(4);
      for (const { at } of own) expect(Math.min(...own.filter((other) => other.at !== at).map((other) => Math.hypot(other.at.x - at.x, other.at.y - at.y)))).toBeLessThan(600);
    }
    expect(planHoldDowns(request({ pitch: 120 })).length).toBeGreaterThan(planned.length);
  });

  it('keep clear of dowel holes, clamps grip the sheet\'s edge, and a sheet without waste has none', () => {
    const [first] = planned;
    const moved = planHoldDowns(request({ holes: [{ centre: first!.at, diameter: 6, purpose: 'dowel' }] }));
    for (const { at } of moved) expect(Math.hypot(at.x - first!.at.x, at.y - first!.at.y)).toBeGreaterThanOrEqual(13);
    for (const { at: { x, y } } of planHoldDowns(request({ kind: 'clamp' }))) expect(x === 0 || x === 1600 || y === 0 || y === 500).toBe(true);
    expect(planHoldDowns(request({ board: rectangle(0, 0, 1600, 500) }))).toEqual([]);
  });
});

describe('what comes near a hold-down', () => {
  const holdDown = (x: number, y: number, changes: Partial<HoldDown> = {}): HoldDown => ({ kind: 'screw', at: { x, y }, keepOut: 20, height: 6, ...changes });
  const program = (...moves: Move[]): SetUp => ({ name: 'set-up 1', shift: [100, 0], programs: [{ file: 'a', cutter: EXAMPLE_CUTTER, kinds: [], moves: [{ kind: 'rapid', to: { x: 0, y: 0, z: 10 } }, ...moves], text: '', reach: { min: { x: 0, y: 0, z: 0 }, max: { x: 0, y: 0, z: 0 } }, minutes: 0, cuttingMinutes: 0, seconds: [], spindleStart: 0, blocks: 0 }] });
  const cut: Move[] = [{ kind: 'rapid', to: { x: 50, y: 50, z: 10 } }, { kind: 'line', to: { x: 50, y: 50, z: -3 }, feed: 500 }, { kind: 'line', to: { x: 150, y: 50, z: -3 }, feed: 900 }];

  it('is told as the gap between the cutter\'s edge and the disc, in the drawing\'s coordinates', () => {
    const [gap] = holdDownGaps([program(...cut)], [holdDown(200, 80)]);
    expect(gap).toMatchObject({ mm: 30 - 10 - 3, at: { x: 200, y: 50 }, rapid: false });
  });

  it('clashes where cutter and disc overlap, by how much', () => {
    expect(holdDownGaps([program(...cut)], [holdDown(200, 60)])).toEqual([expect.objectContaining({ mm: -3, at: { x: 200, y: 50 } })]);
  });

  it('measures arcs on their way, not at their ends alone', () => {
    const arc: Move[] = [{ kind: 'line', to: { x: 50, y: 50, z: -3 }, feed: 500 }, { kind: 'arc', to: { x: 150, y: 50, z: -3 }, centre: { x: 100, y: 50 }, clockwise: true, feed: 900 }];
    expect(holdDownGaps([program(...arc)], [holdDown(200, 130)])[0]).toMatchObject({ mm: expect.closeTo(30 - 13, 9) as number, at: { x: 200, y: 100 } });
    expect(holdDownGaps([program(...arc)], [holdDown(200, -30)])[0]!.mm).toBeGreaterThan(60);
  });

  it('lets rapids pass over what is lower than they are, and no lower ones', () => {
    const over: Move[] = [{ kind: 'rapid', to: { x: 200, y: 0, z: 10 } }];
    expect(holdDownGaps([program(...over)], [holdDown(200, 0)])).toEqual([]);
    expect(holdDownGaps([program(...over)], [holdDown(200, 0, { height: 25 })])).toEqual([expect.objectContaining({ rapid: true, mm: -13 })]);
  });

  it('does not count a hold-down of another set-up', () => {
    expect(holdDownGaps([program(...cut)], [holdDown(200, 60, { setUps: [1] })])).toEqual([]);
    expect(holdDownGaps([{ ...program(...cut), place: 1 }], [holdDown(200, 60, { setUps: [1] })])).toHaveLength(1);
  });
});

it('tells which pieces tabs keep, and in which set-up the others come loose', () => {
  const ring: Region = { loops: [...board.loops, [...rectangle(900, 200, 1000, 300).loops[0]!].reverse()] };
  const tabs = [{ centre: { x: 400, y: 57 }, width: 8, height: 2.5 }, { centre: { x: 1200, y: 443 }, width: 8, height: 2.5 }];
  expect(partedPieces(ring, tabs, tilingAt(stock, [800], []), 6)).toEqual([
    { kind: 'board', at: { x: 60, y: 60 }, area: 1480 * 380, tabs: 2, setUp: 1 }, { kind: 'cut-out', at: expect.anything() as object, area: 10_000, tabs: 0, setUp: 1 },
  ]);
});
