import { describe, expect, it } from 'vitest';
import tileStock from '../../nodes/tile-stock.ts';
import { outcomeOf, outputsOf, problemsOf } from '../support/run-node.ts';
import { channelOf, cutter, line, machine, rectangle, stock } from '../support/shapes.ts';

const sheet = { ...stock, width: 2400, height: 500 };
const board = rectangle(50, 50, 2300, 400);
const channel = channelOf(rectangle(95, 245, 2210, 10), line([100, 250], [2300, 250]));
const base = { stock: sheet, machine: { ...machine, travelX: 900, travelY: 600 }, cutters: [cutter], board, channel, holes: [] };
const across = (...places: readonly number[]) => ({ seams: 'by hand' as const, seamsAcross: places.map((x) => ({ x, y: 10 })) });

it('leaves a sheet that fits in one set-up that covers all of it, without a seam', () => {
  const { tiling, checks } = outputsOf(tileStock, { ...base, stock: { ...sheet, width: 800 }, board: rectangle(50, 50, 700, 400), channel: undefined });
  const whole = { minX: 0, minY: 0, maxX: 800, maxY: 500 };
  expect(tiling).toMatchObject({ seams: [], tiles: [{ name: 'set-up 1', core: whole, window: whole, shift: [0, 0] }] });
  expect(checks.map(({ check, status }) => [check, status])).toEqual([['set-up-reach-x', 'pass'], ['set-up-reach-y', 'pass']]);
});

it('cuts 2.4 m on 0.9 m of travel in three set-ups that overlap by a cutter to each side of their seams', () => {
  const { tiling, quantities, checks } = outputsOf(tileStock, base);
  expect(quantities).toMatchObject({
    setUps: { value: 3 }, setUpsLeast: { value: 3 }, seams: { value: 2 }, seamCrossings: { value: 2 }, seamCrossingsEvenly: { value: 2 }, seamCost: { value: 2 },
  });
  const [a, b] = tiling.tiles.map(({ window }) => window);
  expect([tiling.lap, a!.maxX - b!.minX]).toEqual([6, 12]);
  expect(checks.map(({ status }) => status)).toEqual(Array.from(checks, () => 'pass'));
  expect(checks[2]!.says).toMatch(/^Seam 1 at X \d+ mm crosses 1 groove, the flattest at: 90 deg, at least 30 deg\.$/);
});

it('cuts a sheet larger both ways in rows or in columns', () => {
  const both = { ...base, machine: { ...machine, travelX: 900, travelY: 300 } };
  const cells = (order: 'rows' | 'columns') => outputsOf(tileStock, both, { order }).tiling.tiles.map(({ column, row }) => `${column}${row}`).join(' ');
  expect([cells('rows'), cells('columns')]).toEqual(['00 10 20 21 11 01', '00 01 11 10 20 21']);
});

it('takes the lap from the widest cutter, or a larger one as told, never a smaller one', () => {
  const cutters = [{ ...cutter, diameter: 3 }, { ...cutter, diameter: 8 }];
  const lapOf = (lap: number) => outputsOf(tileStock, { ...base, cutters }, { lap }).tiling.lap;
  expect([lapOf(0), lapOf(5), lapOf(20)]).toEqual([8, 8, 20]);
});

describe('seams put by hand', () => {
  it('lie where they were put, in order', () => {
    const { tiling, quantities } = outputsOf(tileStock, base, across(1500, 800));
    expect(tiling.seams.map(({ at }) => at)).toEqual([800, 1500]);
    expect(quantities).toMatchObject({ setUps: { value: 3 }, setUpsLeast: { value: 3 } });
  });

  it('fail the check of the set-up that becomes too wide, and name it', () => {
    const { checks } = outputsOf(tileStock, base, across(500, 1600));
    expect(checks[0]).toMatchObject({ check: 'set-up-reach-x', status: 'fail', limit: 900, at: [1050, 250] });
    expect(checks[0]!.value).toBe(1600 - 500 + 12 - 6);
    expect(checks[0]!.says).toContain('in set-up 2');
  });

  it('are told with their place where they go through a hole or lie beside one', () => {
    const holes = [[{ centre: { x: 805, y: 60 }, diameter: 6, purpose: 'mounting' as const }]];
    const outcome = outcomeOf(tileStock, { ...base, holes }, across(805, 1500));
    expect(outcome).toMatchObject({ ok: true, cautions: [{ place: 'seamsAcross', found: '0 mm from the hole at (805.0, 60.0) mm' }] });
    expect(outputsOf(tileStock, { ...base, holes }, across(805, 1500)).checks.find(({ check }) => check === 'seam-1-clear')).toMatchObject({ status: 'caution', value: 0, limit: 8, at: [805, 60] });
    expect(outcomeOf(tileStock, { ...base, holes }, across(820, 1500))).toMatchObject({ ok: true, cautions: [] });
  });

  it('are planned along an axis that has none, and everywhere while they are to be planned', () => {
    const both = { ...base, machine: { ...machine, travelX: 900, travelY: 300 } };
    const seams = (params: Partial<Parameters<typeof tileStock.compute>[1]>) => outputsOf(tileStock, both, params).tiling.seams.map(({ axis, at }) => `${axis} ${at}`);
    const plan = seams({});
    expect(seams(across(800, 1500))).toEqual(['x 800', 'x 1500', plan.at(-1)]);
    expect(seams({ ...across(800, 1500), seams: 'planned' })).toEqual(plan);
  });

  it('are left out beside the sheet, which is told', () => {
    const outcome = outcomeOf(tileStock, base, across(-5, 800, 1500, 2400));
    expect(outcome).toMatchObject({ ok: true, outputs: { tiling: { seams: [{ at: 800 }, { at: 1500 }] } }, cautions: [{ place: 'seams', found: '2 beside it' }] });
  });
});

it('tells of parts with nothing to cut, which have no set-up', () => {
  const corner = channelOf(rectangle(95, 45, 2210, 10), line([100, 50], [2300, 50]), line([100, 50], [100, 450]));
  const region = { loops: [...corner.region.loops, ...rectangle(95, 45, 10, 410).loops] };
  const outcome = outcomeOf(tileStock, { ...base, board: undefined, channel: { ...corner, region }, machine: { ...machine, travelX: 900, travelY: 300 } });
  expect(outcome).toMatchObject({ ok: true, outputs: { quantities: { setUps: { value: 4 }, setUpsLeast: { value: 4 } } }, cautions: [{ place: 'stock', found: '2 parts with nothing to cut' }] });
});

it('says what to do about a machine that does not get beyond its own laps', () => {
  expect(problemsOf(tileStock, { ...base, machine: { ...machine, travelX: 30 } }, { lap: 20 })).toMatchObject([{ place: 'machine', found: '30 mm' }]);
});
