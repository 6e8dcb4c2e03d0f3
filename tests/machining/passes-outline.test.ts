import { describe, expect, it } from 'vitest';
import { makeRegionIndex, offsetRegion, subtractRegion, unionRegions, type Point, type Region } from '../../src/geometry/index.ts';
import { makeGrid, outlinePasses, sweepMoves, throughDepth, type OutlineRequest, type Stock } from '../../src/machining/index.ts';
import { expectSoundPasses, GREATEST_FEED, mill, movesBox, placedMovesOf, placesOn, plungesIntoMaterial, RETRACT } from './passes-fixture.ts';

const stock: Stock = { width: 400, height: 300, thickness: 10, thicknessTolerance: 0.5, density: 1190, breakthrough: 0.3 };

const loop = (...places: readonly (readonly [number, number])[]) => places.map(([x, y]): Point => ({ x, y }));
const rectangle = (x: number, y: number, w: number, h: number): Region => ({ loops: [loop([x, y], [x + w, y], [x + w, y + h], [x, y + h])] });
const rounded = (region: Region, radius: number) => offsetRegion(offsetRegion(region, -radius, { join: 'round', tolerance: 0.002 }), radius, { join: 'round', tolerance: 0.002 });

const BOARDS: Record<string, Region> = {
  'a rectangle': rectangle(50, 50, 120, 80),
  'a rounded board': rounded(rectangle(50, 50, 120, 80), 15),
  'a board with a cut-out': subtractRegion(rounded(rectangle(50, 50, 150, 100), 10), rounded(rectangle(90, 80, 60, 40), 8)),
  'an L with an inner corner': { loops: [loop([50, 50], [170, 50], [170, 90], [100, 90], [100, 150], [50, 150])] },
};

const request = (region: Region, changes: Partial<OutlineRequest> = {}): OutlineRequest => ({
  region, stock, cutter: mill(6), tabs: { count: 4, width: 8, height: 3 }, leadIn: 4, finishingAllowance: 0.2, direction: 'climb',
  tolerance: 0.004, retract: RETRACT, greatestFeed: GREATEST_FEED, ...changes,
});

function planned(asked: OutlineRequest) {
  const plan = outlinePasses(asked);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  return plan;
}

const CELL = 0.25;

/** Removes what the passes remove, and gives every cell's middle with what is left of it. */
function simulated(asked: OutlineRequest) {
  const plan = planned(asked);
  const box = movesBox(plan.passes, 10);
  const grid = makeGrid(box, CELL);
  let rapids = 0;
  for (const pass of plan.passes) rapids += sweepMoves(grid, pass.start, pass.moves, asked.cutter.diameter).length;
  const cells = Array.from(grid.depth, (depth, i) => ({
    depth, x: box.minX + ((i % grid.columns) + 0.5) * CELL, y: box.minY + (Math.floor(i / grid.columns) + 0.5) * CELL,
  }));
  return { plan, cells, rapids };
}

const CASES = Object.entries(BOARDS).flatMap(([name, board]) => [0.2, 0].flatMap((allowance) => (['climb', 'conventional'] as const).map((direction) => ({ name, board, allowance, direction }))));

describe('a board is parted from the sheet', () => {
  it.each(CASES)('$name, allowance $allowance, $direction: cut all round but at the tabs, and never into', ({ board, allowance, direction }) => {
    const asked = request(board, { finishingAllowance: allowance, direction });
    const { plan, cells, rapids } = simulated(asked);
    const depth = throughDepth(stock);
    expect(plan.cautions).toEqual([]);
    expect(rapids).toBe(0);
    expectSoundPasses(plan.passes, depth);
    expect(plungesIntoMaterial(plan.passes)).toEqual([]);
    const index = makeRegionIndex(board);
    const axis = makeRegionIndex(offsetRegion(board, 3, { join: 'round', tolerance: 0.002 }));
    let [gouge, left, standing] = [0, 0, 0];
    for (const cell of cells) {
      const inside = index.contains(cell);
      const edge = index.distanceToBoundary(cell);
      if (inside && cell.depth < 0) gouge = Math.max(gouge, edge);
      // Beside the edge, where the cutter reaches, away from tabs.
      if (inside || edge > 5.5 || axis.distanceToBoundary(cell) > 2.95) continue;
      const tab = Math.min(...plan.tabs.map(({ centre }) => Math.hypot(centre.x - cell.x, centre.y - cell.y)));
      if (tab > 4 + 3 + 3.5) left = Math.max(left, depth + cell.depth);
      if (tab < 3.5) standing = Math.max(standing, Math.abs(cell.depth - (3 - stock.thickness)));
    }
    expect(gouge).toBeLessThan(0.02);
    expect(left).toBeLessThan(1e-3);
    expect(standing).toBeLessThan(1e-3);
  });
});

describe('tabs', () => {
  const plan = planned(request(BOARDS['a rectangle']!));

  it('stand on straight places, away from corners, each told with its size', () => {
    expect(plan.tabs).toHaveLength(4);
    for (const { centre, width, height } of plan.tabs) {
      expect([width, height]).toEqual([8, 3]);
      for (const [x, y] of [[50, 50], [170, 50], [170, 130], [50, 130]] as const) expect(Math.hypot(centre.x - x, centre.y - y)).toBeGreaterThan(4 + 3 + 3);
      expect(makeRegionIndex(BOARDS['a rectangle']!).distanceToBoundary(centre)).toBeCloseTo(3, 2);
    }
  });

  it('leave their stated length standing at full height, and no more', () => {
    const asked = request(rectangle(50, 50, 200, 100), { tabs: { count: 2, width: 8, height: 3 }, finishingAllowance: 0 });
    const { plan: { tabs }, cells } = simulated(asked);
    const axis = makeRegionIndex(offsetRegion(asked.region, 3, { join: 'round', tolerance: 0.002 }));
    for (const { centre } of tabs) {
      const along = cells.filter(({ depth, ...place }) => depth > -throughDepth(stock) + 0.01 && Math.hypot(place.x - centre.x, place.y - centre.y) < 20 && axis.distanceToBoundary(place) < 0.6 * CELL);
      const reach = along.map(({ x, y }) => Math.hypot(x - centre.x, y - centre.y));
      expect(Math.max(...reach)).toBeGreaterThan(4 - CELL);
      expect(Math.max(...reach)).toBeLessThan(4 + CELL / 2);
      expect(along.every(({ depth }) => Math.abs(depth - (3 - stock.thickness)) < 1e-3)).toBe(true);
    }
  });

  it('by pitch are at most that far apart, and at least two', () => {
    // 120 x 80 cut 3.2 mm outside: 400 + 2 pi 3.2 = 420.1 mm round.
    const count = (pitch: number) => planned(request(BOARDS['a rectangle']!, { tabs: { pitch, width: 8, height: 3 } })).tabs.length;
    expect([count(100), count(140), count(141), count(5000)]).toEqual([5, 4, 3, 2]);
  });

  it('are as many as fit, with a caution when none does', () => {
    expect(planned(request(rectangle(50, 50, 15, 10), { tabs: { count: 9, width: 8, height: 3 } })).tabs.length).toBeLessThan(5);
    const none = planned(request(rectangle(50, 50, 15, 10), { tabs: { count: 4, width: 200, height: 3 } }));
    expect(none.tabs).toEqual([]);
    expect(none.cautions).toMatchObject([{ expected: 'room for a tab' }]);
  });

  it('may be left out', () => {
    for (const asked of [request(BOARDS['a rectangle']!, { tabs: { count: 0, width: 8, height: 3 } }), { ...request(BOARDS['a rectangle']!), tabs: undefined }]) {
      const { tabs, ...rest } = asked;
      const bare = planned(tabs ? { ...rest, tabs } : rest);
      expect(bare.tabs).toEqual([]);
      expect(bare.cautions).toEqual([]);
    }
  });
});

describe('the way round a board', () => {
  it('cuts cut-outs before the edge', () => {
    const names = planned(request(BOARDS['a board with a cut-out']!)).passes.map(({ name }) => name);
    expect([...new Set(names)]).toEqual(['cut-out 1', 'board edge 2']);
  });

  it('goes clockwise to climb', () => {
    const area = (direction: 'climb' | 'conventional') => {
      const asked = request(BOARDS['a rectangle']!, { direction, finishingAllowance: 0, tabs: { count: 0, width: 8, height: 3 } });
      return [...placedMovesOf(planned(asked).passes)].reduce((sum, { from, move }) => sum + (from.x * move.to.y - move.to.x * from.y) / 2, 0);
    };
    expect(area('climb')).toBeLessThan(0);
    expect(area('conventional')).toBeGreaterThan(0);
  });

  it('leads in by an arc in the waste when no finishing pass follows, and on the edge itself when the sheet ends there', () => {
    const start = (region: Region) => planned(request(region, { finishingAllowance: 0 })).passes[0]!.start;
    expect(makeRegionIndex(BOARDS['a rectangle']!).distanceToBoundary(start(BOARDS['a rectangle']!))).toBeCloseTo(7, 1);
    const tight = rectangle(6.5, 6.5, 387, 287);
    expect(makeRegionIndex(tight).distanceToBoundary(start(tight))).toBeCloseTo(3, 1);
  });

  it('keeps half a diameter off the board with every move below the face', () => {
    const asked = request(BOARDS['a board with a cut-out']!);
    const index = makeRegionIndex(asked.region);
    let least = Infinity;
    for (const { from, move } of placedMovesOf(planned(asked).passes)) {
      for (const place of placesOn(from, move, 0.5)) {
        least = Math.min(least, (index.contains(place) ? -1 : 1) * index.distanceToBoundary(place));
      }
    }
    expect(least).toBeGreaterThan(3 - 0.012);
  });
});

describe('what is refused or cautioned', () => {
  it.each([
    ['a sheet thicker than the cutting edge', { cutter: mill(6, { cuttingLength: 10 }) }, 'cutter'],
    ['tabs as high as the sheet', { tabs: { count: 4, width: 8, height: 10 } }, 'tab height'],
    ['tabs without width', { tabs: { count: 4, width: 0, height: 3 } }, 'tab width'],
    ['a negative lead-in', { leadIn: -1 }, 'lead-in'],
    ['a thick finishing allowance', { finishingAllowance: 2 }, 'finishing allowance'],
  ] as const)('%s', (_, changes, place) => {
    expect(outlinePasses(request(BOARDS['a rectangle']!, changes))).toMatchObject({ ok: false, problems: [{ place }] });
  });

  it('names the cut-out, the bay and the gap between boards that the cutter does not enter', () => {
    const small = subtractRegion(rectangle(50, 50, 120, 80), rectangle(100, 85, 5, 5));
    expect(planned(request(small)).cautions).toMatchObject([{ expected: 'room for a cutter of 6 mm beside the board' }]);
    const bay = subtractRegion(rectangle(50, 50, 120, 80), rectangle(100, 100, 4, 60));
    expect(planned(request(bay)).cautions[0]!.at.x).toBeCloseTo(102, -1);
    const pair = unionRegions([rectangle(50, 50, 60, 60), rectangle(114, 50, 60, 60)]);
    expect(planned(request(pair)).cautions.length).toBeGreaterThan(0);
  });

  it('no board gives no passes', () => {
    expect(outlinePasses(request({ loops: [] }))).toEqual({ ok: true, passes: [], tabs: [], cautions: [] });
  });
});
