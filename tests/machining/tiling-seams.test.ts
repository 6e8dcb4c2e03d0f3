import { describe, expect, it } from 'vitest';
import type { Path } from '../../src/geometry/index.ts';
import { type TilingPlan, planTiling } from '../../src/machining/index.ts';
import { axisWork } from '../../src/machining/tiling/axis-work.ts';
import { cheapestSeams, fewestSeams, tileExtent } from '../../src/machining/tiling/choose-seams.ts';
import { shiftsFor } from '../../src/machining/tiling/shifts.ts';
import { seeded } from '../support/random.ts';
import { circle, line, rectangle } from '../support/shapes.ts';
import { channelFor, hole, planned, requestFor } from './tiling-fixture.ts';

/** Centre lines as a groove 10 mm wide. */
const grooved = (...lines: readonly Path[]) => channelFor(10, ...lines);
const places = (plan: TilingPlan) => plan.tiling.seams.map(({ at }) => at);
const kinds = (plan: TilingPlan) => plan.clearances.map(({ feature, distance, wanted }) => (distance < wanted ? feature!.kind : 'clear'));

describe('of the fewest seams, those that cost least', () => {
  interface Found { readonly count: number; readonly cost: number; readonly uneven: number }
  /** Tries every choice of places. */
  function tried(stretches: readonly (readonly [number, number])[], frame: number, lap: number, all: readonly number[], costs: readonly number[]): Found | undefined {
    const work = axisWork(stretches.map(([minX, maxX]) => ({ minX, maxX, minY: 0, maxY: 1 })), 'x', 100);
    let best: Found | undefined;
    for (let choice = 0; choice < 1 << all.length; choice++) {
      const chosen = all.filter((_, i) => choice & (1 << i));
      const bounds = [-Infinity, ...chosen, Infinity];
      // What is cut in a tile is what of the work lies between its seams or in its laps.
      const fits = bounds.slice(1).every((to, i) => {
        const parts = stretches.flatMap(([a, b]) => { const [from, end] = [Math.max(a, bounds[i]! - lap), Math.min(b, to + lap)]; return from <= end ? [from, end] : []; });
        return parts.length === 0 || Math.max(...parts) - Math.min(...parts) <= frame;
      });
      if (!fits) continue;
      const cost = costs.reduce((sum, one, i) => (choice & (1 << i) ? sum + Math.round(one * 10) : sum), 0);
      const marks = [work.ends[0], ...chosen, work.ends[1]];
      const uneven = marks.slice(1).reduce((sum, mark, i) => sum + (mark - marks[i]!) ** 2, 0);
      const found = { count: chosen.length, cost, uneven };
      if (!best || (found.count - best.count || found.cost - best.cost || found.uneven - best.uneven) < 0) best = found;
    }
    return best;
  }

  it('are found as by trying every choice of places', () => {
    const random = seeded(11);
    let several = 0;
    for (let i = 0; i < 150; i++) {
      const gap = random() < 0.5 ? 30 + random() * 30 : 200;
      const stretches = gap < 100 ? [[2, gap] as const, [gap + 15 * random(), 98] as const] : [[2, 98] as const];
      const [frame, lap] = [25 + random() * 60, 1 + random() * 6];
      const all = [...new Set(Array.from({ length: 8 }, () => 5 + Math.round(random() * 90)))].sort((a, b) => a - b);
      const costs = all.map(() => (random() < 0.3 ? 1000 : Math.round(random() * 4)));
      const work = axisWork(stretches.map(([minX, maxX]) => ({ minX, maxX, minY: 0, maxY: 1 })), 'x', 100);
      const found = cheapestSeams(work, { frame, lap }, all, costs);
      const wanted = tried(stretches, frame, lap, all, costs);
      expect(found === undefined, `case ${i}`).toBe(wanted === undefined);
      if (!found || !wanted) continue;
      const marks = [work.ends[0], ...found, work.ends[1]];
      expect({
        count: found.length, cost: found.reduce((sum, place) => sum + 10 * costs[all.indexOf(place)]!, 0),
        uneven: Math.round(marks.slice(1).reduce((sum, mark, k) => sum + (mark - marks[k]!) ** 2, 0)),
      }, `case ${i}`).toEqual({ ...wanted, uneven: Math.round(wanted.uneven) });
      several += found.length > 1 ? 1 : 0;
    }
    expect(several).toBeGreaterThan(20);
  });

  it('number no fewer than any that reach: a gap in the work saves a set-up', () => {
    const parts = (...spans: readonly (readonly [number, number])[]) => axisWork(spans.map(([minX, maxX]) => ({ minX, maxX, minY: 0, maxY: 1 })), 'x', 2000);
    expect(fewestSeams(parts([0, 500], [1500, 2000]), { frame: 600, lap: 6 })).toHaveLength(1);
    expect(fewestSeams(parts([0, 2000]), { frame: 600, lap: 6 })).toHaveLength(3);
    const [seam] = fewestSeams(parts([0, 500], [1500, 2000]), { frame: 600, lap: 6 })!;
    expect(tileExtent(parts([0, 500], [1500, 2000]), { frame: 600, lap: 6 }, seam, undefined)).toEqual([1500, 2000]);
  });
});

describe('a seam goes where it disturbs least', () => {
  // 1000 mm of work on 600 mm of travel: the seam may lie from 406 to 594 or so.
  const bench = (...lines: readonly Path[]) => requestFor({ sheet: { width: 1000, height: 400 }, travel: [600, 600], channel: grooved(...lines) });

  it('between letters rather than through one', () => {
    const plan = planned(bench(line([5, 200], [430, 200]), line([470, 200], [995, 200])));
    expect(plan.tiling.seams).toMatchObject([{ axis: 'x', crossings: [], cost: 0 }]);
    // The grooves end at 435 and 465; as near to the middle of the work as 8 mm of clearance let it.
    expect(places(plan)).toEqual([457]);
  });

  it('where it crosses one groove rather than three, and in the middle of what is as good', () => {
    const plan = planned(bench(line([5, 200], [995, 200]), line([5, 250], [480, 250]), line([5, 300], [480, 300])));
    expect(plan.tiling.seams[0]).toMatchObject({ crossings: [{ angle: 90 }], cost: 1 });
    expect(places(plan)[0]).toBe(500);
  });

  it('where it crosses squarely rather than slantwise', () => {
    const plan = planned(bench(line([5, 20], [500, 350], [995, 350])));
    expect(plan.tiling.seams[0]!.crossings[0]!.angle).toBeCloseTo(90, 6);
    expect(places(plan)[0]).toBeGreaterThan(500);
  });

  it('clear of a hole, a stroke\'s end, a crossing, a bend, and a groove that runs along it, by the lap and 2 mm', () => {
    const through = line([5, 200], [995, 200]);
    const clear = 6 + 2;
    const cases: readonly [string, ReturnType<typeof requestFor>, number][] = [
      ['hole', { ...bench(through), holes: [hole(500, 300, 8)] }, 4],
      ['end', bench(through, line([420, 300], [500, 300])), 5],
      ['crossing', bench(through, line([480, 180], [520, 220])), 5],
      ['bend', bench(line([5, 200], [500, 300], [995, 200])), 5],
      ['along', bench(through, line([500, 100], [500, 150])), 5],
    ];
    for (const [kind, request, reach] of cases) {
      const plan = planned(request);
      expect(Math.abs(places(plan)[0]! - 500), kind).toBeGreaterThanOrEqual(clear + reach);
      expect(kinds(plan), kind).toEqual(['clear']);
      const hand = planned({ ...request, byHand: { x: [500 + clear + reach - 0.5] } });
      expect(hand.clearances[0]!.distance, kind).toBeLessThan(hand.clearances[0]!.wanted);
    }
  });

  it('clear of a board\'s edge and of the cutter beside it', () => {
    const plan = planned(requestFor({ sheet: { width: 1000, height: 400 }, travel: [600, 600], board: { loops: [...rectangle(5, 5, 490, 300).loops, ...rectangle(510, 5, 485, 300).loops] } }));
    expect(Math.min(Math.abs(places(plan)[0]! - 495), Math.abs(places(plan)[0]! - 510))).toBeGreaterThanOrEqual(6 + 2 + 6);
  });

  it('in the least bad place where no place is clear, and says what is there', () => {
    const comb = Array.from({ length: 68 }, (_, i) => line([400 + 3 * i, 100], [400 + 3 * i, 200]));
    const plan = planned(bench(line([5, 250], [995, 250]), ...comb));
    expect(plan.clearances[0]).toMatchObject({ wanted: 8, feature: { kind: expect.stringMatching(/along|end/) as string } });
    expect(plan.clearances[0]!.disturbed).toBeGreaterThan(1);
    expect(plan.tiling.seams[0]!.cost).toBeGreaterThan(1000);
  });

  it('in the same place when the drawing goes the other way round', () => {
    const there = bench(line([5, 20], [500, 350], [995, 350]), circle(470, 100, 30));
    const back = bench(line([995, 350], [500, 350], [5, 20]), circle(470, 100, 30));
    expect(places(planned(back))).toEqual(places(planned(there)));
  });
});

describe('odd work', () => {
  it('is one set-up where it is exactly as long as the travel and the cutter, two where it is longer', () => {
    const request = (length: number) => requestFor({ sheet: { width: 1000, height: 100 }, travel: [900, 600], channel: grooved(line([50, 50], [40 + length, 50])) });
    expect(planned(request(906)).tiling.tiles).toHaveLength(1);
    expect(planned(request(906.2)).tiling.tiles).toHaveLength(2);
  });

  it('without groove, board and holes is the whole sheet', () => {
    expect(planned(requestFor({})).tiling).toMatchObject({ tiles: [{}, {}, {}], seams: [{ crossings: [], cost: 0 }, { crossings: [] }], lap: 6 });
  });

  it('of one stroke that runs along the only seam is judged, not refused', () => {
    const plan = planned(requestFor({ sheet: { width: 1000, height: 400 }, travel: [600, 600], channel: grooved(line([500, 10], [500, 390])), holes: [hole(10, 200), hole(990, 200)] }));
    expect(plan.tiling.tiles).toHaveLength(2);
    expect(kinds(plan)).toEqual(['clear']);
  });

  it('shorter than its sheet needs only what the work needs', () => {
    const plan = planned(requestFor({ board: rectangle(1500, 50, 800, 400) }));
    expect(plan.tiling.tiles).toMatchObject([{ shift: [0, 0], core: { minX: 0, maxX: 2400 } }]);
    const { window } = plan.tiling.tiles[0]!;
    expect(window.maxX - window.minX).toBeLessThanOrEqual(906);
    expect([window.minX <= 1484, window.maxX >= 2316]).toEqual([true, true]);
  });

  it('on a travel not over two laps less a cutter is refused with what to do', () => {
    const plan = planTiling(requestFor({ travel: [40, 600], lap: 25, board: rectangle(50, 50, 2300, 400) }));
    expect(plan).toMatchObject({ ok: false, problems: [{ place: 'machine', expected: 'travel along X well over 44 mm, two laps less a cutter', found: '40 mm' }] });
  });

  it('has no set-up for a part of the sheet in which nothing is cut', () => {
    const plan = planned(requestFor({
      sheet: { width: 1500, height: 1000 }, travel: [800, 600],
      channel: grooved(line([50, 50], [1450, 50]), line([50, 60], [50, 950])),
    }));
    expect(plan.axes.map(({ seams }) => seams.length)).toEqual([1, 1]);
    expect([plan.tiling.tiles.length, plan.idle]).toEqual([3, 1]);
  });

  it('in the first part of which nothing is cut begins unshifted all the same', () => {
    const plan = planned(requestFor({
      sheet: { width: 1500, height: 1000 }, travel: [800, 600],
      channel: grooved(line([50, 950], [1450, 950]), line([1450, 60], [1450, 930])),
    }));
    expect(plan.tiling.tiles.map(({ name, column, row }) => [name, column, row])).toEqual([['set-up 1', 1, 0], ['set-up 2', 1, 1], ['set-up 3', 0, 1]]);
    expect(plan.tiling.tiles[0]!.shift).toEqual([0, 0]);
    expect(plan.tiling.tiles[2]!.shift[0]).toBeLessThan(0);
  });
});

describe('a sheet larger in both directions', () => {
  const plan = (order: 'rows' | 'columns') => planned(requestFor({ sheet: { width: 2400, height: 1600 }, travel: [900, 900], board: rectangle(40, 40, 2320, 1520), channel: grooved(line([100, 100], [2300, 1500])), order }));

  it('is cut to and fro along rows, or along columns', () => {
    expect(plan('rows').tiling.tiles.map(({ column, row }) => [column, row])).toEqual([[0, 0], [1, 0], [2, 0], [2, 1], [1, 1], [0, 1]]);
    expect(plan('columns').tiling.tiles.map(({ column, row }) => [column, row])).toEqual([[0, 0], [0, 1], [1, 1], [1, 0], [2, 0], [2, 1]]);
  });

  it('is shifted by one pitch between columns where that costs nothing', () => {
    const shifts = [0, 1, 2].map((column) => plan('rows').tiling.tiles.find((tile) => tile.column === column)!.shift[0]);
    expect(shifts[2]).toBe(2 * shifts[1]!);
    expect(shifts[1]! % 1).toBe(0);
  });
});

describe('shifts', () => {
  it('are one pitch, as round as the travel allows', () => {
    expect(shiftsFor([[0, 800], [700, 1500], [1400, 2200]], 900, -3).shifts).toEqual([0, 700, 1400]);
    expect(shiftsFor([[0, 899.9], [703.45, 1603.3]], 900, -3).shifts).toEqual([0, 703.5]);
  });

  it('differ where one pitch will not do, and still reach everything', () => {
    const extents = [[0, 900], [300, 1200], [1100, 2000]] as const;
    const { shifts, start } = shiftsFor(extents, 900.02, -3);
    for (const [i, [low, high]] of extents.entries()) {
      expect(low - shifts[i]!).toBeGreaterThanOrEqual(start);
      expect(high - shifts[i]!).toBeLessThanOrEqual(start + 900.02 + 1e-9);
    }
    expect(shifts).toEqual([0, 300, 1100]);
  });

  it('leave the programs\' zero within reach where they can', () => {
    expect(shiftsFor([[20, 500]], 600, -3).start).toBe(-3);
    expect(shiftsFor([[700, 1200]], 600, -3).start).toBe(600);
  });
});
