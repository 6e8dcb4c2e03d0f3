import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/index.ts';
import { type TilingPlan, type TilingRequest, LEAD_ROOM, planTiling } from '../../src/machining/index.ts';
import { seeded } from '../support/random.ts';
import { anyRequest, cutPoints, mappedRequest, planned } from './tiling-fixture.ts';

const CASES = Array.from({ length: 200 }, (_, i) => ({ seed: i + 1, request: anyRequest(seeded(7000 + i)) }));
const PLANS = CASES.map(({ seed, request }) => ({ seed, request, plan: planTiling(request) }));
const GOOD = PLANS.flatMap(({ seed, request, plan }) => (plan.ok ? [{ seed, request, plan, tiles: plan.tiling.tiles, lap: plan.tiling.lap }] : []));
const EPS = 1e-6;
const axes = ['x', 'y'] as const;
const low = { x: 'minX', y: 'minY' } as const, high = { x: 'maxX', y: 'maxY' } as const;
const inBox = ({ x, y }: Point, box: { minX: number; minY: number; maxX: number; maxY: number }, margin = 0) =>
  x >= box.minX - margin && x <= box.maxX + margin && y >= box.minY - margin && y <= box.maxY + margin;

describe('two hundred sheets, strokes and machines', () => {
  it('are nearly all planned, in one set-up and in many, divided one way and both', () => {
    const counts = GOOD.map(({ plan }) => plan.axes.map(({ seams }) => seams.length));
    expect(GOOD.length).toBeGreaterThan(190);
    for (const some of [([x, y]: number[]) => x === 0 && y === 0, ([x, y]: number[]) => x! > 0 && y === 0, ([x, y]: number[]) => x === 0 && y! > 0, ([x, y]: number[]) => x! > 1 && y! > 1])
      expect(counts.filter(some).length).toBeGreaterThan(5);
  });

  it.each(axes)('divide the sheet without gap or overlap along %s', (axis) => {
    for (const { seed, request, plan, tiles } of GOOD) {
      const [seams, size] = [plan.axes[axis === 'x' ? 0 : 1].seams, axis === 'x' ? request.sheet.width : request.sheet.height];
      for (const { core, column, row } of tiles) {
        const index = axis === 'x' ? column : row;
        const [from, to] = [seams[index - 1], seams[index]];
        expect(core[low[axis]] - (from ?? Math.min(core[low[axis]], 0)), `seed ${seed}`).toBe(0);
        expect(core[high[axis]] - (to ?? Math.max(core[high[axis]], size)), `seed ${seed}`).toBe(0);
      }
    }
  });

  it('have every cut in at least one core, and in the window of each set-up whose core or lap it lies in', () => {
    for (const { seed, request, plan: { axes: [x, y] }, tiles, lap } of GOOD) {
      const points = cutPoints(request);
      const laps = tiles.map(({ core, column, row }) => ({
        minX: core.minX - (column > 0 ? lap : 0), maxX: core.maxX + (column < x.seams.length ? lap : 0), minY: core.minY - (row > 0 ? lap : 0), maxY: core.maxY + (row < y.seams.length ? lap : 0),
      }));
      expect(points.filter((point) => !tiles.some(({ core }) => inBox(point, core, EPS))), `seed ${seed}`).toEqual([]);
      expect(points.filter((point) => tiles.some(({ window }, i) => inBox(point, laps[i]!, -EPS) && !inBox(point, window, EPS))), `seed ${seed}`).toEqual([]);
    }
  });

  it('have windows that are core and lap at seams, and no more', () => {
    for (const { seed, plan: { axes: [x, y] }, tiles, lap } of GOOD) {
      for (const { core, window, column, row } of tiles) {
        const wanted = { minX: core.minX - (column > 0 ? lap : 0), maxX: core.maxX + (column < x.seams.length ? lap : 0), minY: core.minY - (row > 0 ? lap : 0), maxY: core.maxY + (row < y.seams.length ? lap : 0) };
        expect(inBox({ x: window.minX, y: window.minY }, wanted, EPS) && inBox({ x: window.maxX, y: window.maxY }, wanted, EPS), `seed ${seed}`).toBe(true);
      }
    }
  });

  it('stay within the travel, all set-ups together, the programs\' zero being where it was', () => {
    for (const { seed, request, tiles } of GOOD) {
      for (const [i, axis] of axes.entries()) {
        const from = Math.min(...tiles.map(({ window, shift }) => window[low[axis]] - shift[i]!)), to = Math.max(...tiles.map(({ window, shift }) => window[high[axis]] - shift[i]!));
        expect(to - from, `seed ${seed}`).toBeLessThanOrEqual(request.travel[i]! + Math.min(...request.cutters) + EPS);
      }
    }
  });

  it('have as few set-ups along each axis as work without a gap can have', () => {
    for (const { seed, request, plan } of GOOD.filter(({ request: { board } }) => board)) {
      const { lap } = plan.tiling;
      for (const [i, { seams }] of plan.axes.entries()) {
        const [from, to, size] = i === 0
          ? [request.board!.loops[0]![0]!.x, request.board!.loops[0]![2]!.x, request.sheet.width] : [request.board!.loops[0]![0]!.y, request.board!.loops[0]![2]!.y, request.sheet.height];
        const aside = Math.max(...request.cutters) + LEAD_ROOM;
        const span = Math.min(size, to + aside) - Math.max(0, from - aside);
        const frame = request.travel[i]! + Math.min(...request.cutters);
        const least = span <= frame ? 1 : Math.max(2, Math.ceil((span - 2 * lap) / (frame - 0.02 - 2 * lap) - 1e-9));
        expect(seams.length + 1, `seed ${seed}, axis ${i}`).toBe(least);
        expect(plan.axes[i]!.least, `seed ${seed}`).toBe(least);
      }
    }
  });

  it('begin unshifted and shift by whole hundredths, along X between columns only and along Y between rows only', () => {
    for (const { seed, tiles } of GOOD) {
      expect(tiles[0]!.shift, `seed ${seed}`).toEqual([0, 0]);
      for (const { shift, column, row } of tiles) {
        for (const one of shift) expect(Math.abs(one * 100 - Math.round(one * 100)), `seed ${seed}`).toBeLessThan(EPS);
        expect(tiles.filter((other) => other.column === column).every((other) => other.shift[0] === shift[0])).toBe(true);
        expect(tiles.filter((other) => other.row === row).every((other) => other.shift[1] === shift[1])).toBe(true);
      }
    }
  });

  it('go from neighbour to neighbour where no part is left out', () => {
    for (const { seed, tiles } of GOOD.filter(({ plan }) => plan.idle === 0)) {
      for (const [i, tile] of tiles.slice(1).entries())
        expect(Math.abs(tile.column - tiles[i]!.column) + Math.abs(tile.row - tiles[i]!.row), `seed ${seed}`).toBe(1);
    }
  });

  it('have each hole in the core of one set-up', () => {
    for (const { seed, request, tiles } of GOOD) {
      for (const { centre: { x, y } } of request.holes)
        expect(tiles.filter(({ core }) => x >= core.minX && x < core.maxX && y >= core.minY && y < core.maxY).length, `seed ${seed}`).toBe(1);
    }
  });
});

describe('a plan does not depend on how the work lies', () => {
  const some = GOOD.slice(0, 30);
  const costs = (plan: TilingPlan) => plan.tiling.seams.reduce((sum, { cost }) => sum + cost, 0);
  const same = (map: (point: Point) => Point, more: (request: TilingRequest) => Partial<TilingRequest>, check: (a: TilingPlan, b: TilingPlan, seed: number) => void) => {
    for (const { seed, request, plan } of some) check(plan, planned(mappedRequest(request, map, more(request))), seed);
  };

  it('turned about the diagonal, it is the same plan turned', () => {
    same(({ x, y }) => ({ x: y, y: x }), ({ sheet, travel }) => ({ sheet: { width: sheet.height, height: sheet.width }, travel: [travel[1], travel[0]] }), (a, b, seed) => {
      expect(b.axes.map(({ seams }) => seams), `seed ${seed}`).toEqual([a.axes[1].seams, a.axes[0].seams]);
      expect(costs(b)).toBeCloseTo(costs(a), 6);
    });
  });

  it('moved with room around it, its seams move along', () => {
    for (const { seed, request } of some) {
      const roomy = mappedRequest(request, ({ x, y }) => ({ x: x + 100, y: y + 100 }), { sheet: { width: request.sheet.width + 900, height: request.sheet.height + 900 } });
      const moved = mappedRequest(roomy, ({ x, y }) => ({ x: x + 137, y: y + 61 }), {});
      const [a, b] = [planned(roomy), planned(moved)];
      for (const [i, by] of [137, 61].entries()) {
        expect(b.axes[i]!.seams.length, `seed ${seed}`).toBe(a.axes[i]!.seams.length);
        for (const [k, place] of a.axes[i]!.seams.entries()) expect(b.axes[i]!.seams[k]! - by, `seed ${seed}`).toBeCloseTo(place, 6);
      }
    }
  });

  it('mirrored, it has as many set-ups and costs the same', () => {
    for (const { seed, request, plan } of some) {
      const other = planned(mappedRequest(request, ({ x, y }) => ({ x: request.sheet.width - x, y }), {}));
      expect(other.axes.map(({ seams }) => seams.length), `seed ${seed}`).toEqual(plan.axes.map(({ seams }) => seams.length));
      // A line is crossed above the lower end of a chord: seen from the other side, a seam through a point counts the other chord.
      expect(Math.abs(costs(other) - costs(plan)), `seed ${seed}`).toBeLessThanOrEqual(0.2 + 0.01 * costs(plan));
    }
  });

  // Without a board: the room for lead-ins beside one does not grow with it.
  it('ten times as large for a machine ten times as large, it has as many set-ups', () => {
    for (const { seed, request } of some.filter(({ request: { board } }) => !board)) {
      const { sheet, travel, cutters, lap } = request;
      const large = mappedRequest(request, ({ x, y }) => ({ x: 10 * x, y: 10 * y }), {
        sheet: { width: 10 * sheet.width, height: 10 * sheet.height }, travel: [10 * travel[0], 10 * travel[1]], cutters: cutters.map((one) => 10 * one), lap: 10 * lap, step: 10,
      }, 10);
      const [a, b] = [planned(request), planned(large)];
      expect(b.axes.map(({ seams }) => seams.length), `seed ${seed}`).toEqual(a.axes.map(({ seams }) => seams.length));
    }
  });
});
