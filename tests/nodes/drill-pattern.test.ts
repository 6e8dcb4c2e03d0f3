import { expect, it } from 'vitest';
import drillPattern from '../../nodes/drill-pattern.ts';
import setWidth from '../../nodes/set-width.ts';
import { applyToPath, applyToPoint, distance, lerp, makeRegionIndex, multiply, regionFromLoops, rotation, scaling } from '../../src/geometry/index.ts';
import { holeEnds } from '../../src/machining/index.ts';
import { outcomeOf, outputsOf, problemsOf } from '../support/run-node.ts';
import { circle, line, rectangle } from '../support/shapes.ts';

const board = rectangle(0, 0, 400, 200);
const { channel } = outputsOf(setWidth, { strokes: [{ path: line([100, 100], [300, 100]) }, { path: line([300, 103], [300, 160]) }, { path: circle(200, 150, 20) }] }, { width: 10 });
const centres = (outputs: { holes: readonly { centre: { x: number; y: number } }[] }) => outputs.holes.map(({ centre }) => [Math.round(centre.x * 100) / 100, Math.round(centre.y * 100) / 100]);

it('puts one hole at each end of a stroke, one on a closed stroke, and lets ends that meet share one', () => {
  const found = outputsOf(drillPattern, { channel, board: undefined, others: [] }, { pattern: 'ends of strokes', diameter: 5, purpose: 'cable' });
  expect(centres(found)).toEqual([[100, 100], [300, 100], [300, 160], [220, 150]]);
  expect(found.holes[0]).toMatchObject({ diameter: 5, purpose: 'cable' });
});

it('puts holes in the corners at the edge distance', () => {
  expect(centres(outputsOf(drillPattern, { channel, board, others: [] }, { pattern: 'corners', edgeDistance: 15 }))).toEqual([[15, 15], [385, 15], [385, 185], [15, 185]]);
});

it('spaces holes along the outline at most a pitch apart, clear of the groove', () => {
  const { holes } = outputsOf(drillPattern, { channel, board, others: [] }, { pattern: 'along the outline', pitch: 100, edgeDistance: 20, diameter: 6, grooveDistance: 8 });
  const groove = makeRegionIndex(channel.region);
  expect(holes.length).toBe(Math.ceil((2 * (360 + 160)) / 100));
  for (const { centre } of holes) expect(groove.distanceToBoundary(centre)).toBeGreaterThanOrEqual(8 + 3 - 0.05);
  expect(Math.min(...holes.flatMap((a, i) => holes.slice(i + 1).map((b) => distance(a.centre, b.centre))))).toBeGreaterThan(60);
});

it('moves a hole along the outline when the groove is in its way', () => {
  const near = outputsOf(setWidth, { strokes: [{ path: line([150, 30], [250, 30]) }] }, { width: 10 }).channel;
  const { holes } = outputsOf(drillPattern, { channel: near, board, others: [] }, { pattern: 'along the outline', pitch: 180, edgeDistance: 20 });
  const groove = makeRegionIndex(near.region);
  for (const { centre } of holes) expect(groove.distanceToBoundary(centre)).toBeGreaterThan(10.9);
});

it('keeps every hole put by hand and names those that are not clear', () => {
  const outcome = outcomeOf(drillPattern, { channel, board, others: [] }, { pattern: 'by hand', places: [{ x: 40, y: 40 }, { x: 200, y: 100 }, { x: 500, y: 0 }] });
  expect(outcome).toMatchObject({ ok: true, outputs: { holes: [{}, {}, {}] }, cautions: [{ found: '(200.0, 100.0) mm, which is not' }, { found: '(500.0, 0.0) mm, which is not' }] });
});

it('says so when there is no room for any hole', () => {
  expect(problemsOf(drillPattern, { channel, board, others: [] }, { pattern: 'corners', edgeDistance: 150 })[0]).toMatchObject({ place: 'pattern', found: 'none' });
});

const wide = rectangle(0, 0, 1000, 200);
const open = { channel: undefined, board: wide, others: [] };

it('puts holes in the corners first, then evenly between them at most a pitch apart', () => {
  const found = outputsOf(drillPattern, open, { pattern: 'corners and between', pitch: 300, edgeDistance: 20 });
  const xs = [20, 260, 500, 740, 980];
  expect(centres(found).map(([x, y]) => [Math.round(x!), Math.round(y!)])).toEqual([...xs.map((x) => [x, 20]), ...[...xs].reverse().map((x) => [x, 180])]);
});

it.each([1, 2, 3, 4, 5, 6, 7, 11, 24])('makes exactly %i holes where there is room', (count) => {
  expect(outputsOf(drillPattern, open, { pattern: 'a number along the outline', count, edgeDistance: 20 }).holes).toHaveLength(count);
});

it('gives holes beyond four to the stretch where they are farthest apart', () => {
  const found = outputsOf(drillPattern, open, { pattern: 'a number along the outline', count: 6, edgeDistance: 20 });
  expect(centres(found).map(([x, y]) => [Math.round(x!), Math.round(y!)])).toEqual([[20, 20], [500, 20], [980, 20], [980, 180], [500, 180], [20, 180]]);
});

it.each([[0, 1], [33, 1], [-118, 1], [0, 0.5], [71, 3]])('keeps its distances on a board turned by %d degrees and scaled by %d', (turn, scale) => {
  const matrix = multiply(rotation(turn), scaling(scale));
  const turned = (path: ReturnType<typeof line>) => applyToPath(matrix, path);
  const strokes = [[[30, 30], [970, 30]], [[200, 170], [205, 60]], [[500, 10], [500, 190]]].map(([a, b]) => ({ path: turned(line(a as [number, number], b as [number, number])) }));
  const near = outputsOf(setWidth, { strokes }, { width: 10 * scale }).channel;
  const around = regionFromLoops(wide.loops.map((loop) => loop.map((point) => applyToPoint(matrix, point))), 'nonzero');
  const others = [[{ centre: applyToPoint(matrix, { x: 700, y: 180 }), diameter: 8, purpose: 'cable' as const, slot: { length: 40, angle: turn } }]];
  const [edgeDistance, diameter, grooveDistance] = [18 * scale, 6 * scale, 7 * scale];
  const { holes } = outputsOf(drillPattern, { channel: near, board: around, others }, { pattern: 'corners and between', pitch: 130 * scale, edgeDistance, diameter, grooveDistance, reach: 60 * scale });
  const [walls, edge] = [makeRegionIndex(near.region), makeRegionIndex(around)];
  expect(holes.length).toBeGreaterThan(4);
  for (const { centre } of holes) {
    expect(walls.distanceToBoundary(centre)).toBeGreaterThanOrEqual(grooveDistance + diameter / 2 - 0.03);
    expect(edge.distanceToBoundary(centre)).toBeGreaterThanOrEqual(edgeDistance - 0.03);
    const [a, b] = holeEnds(others[0]![0]!);
    for (let t = 0; t <= 1; t += 0.05) expect(distance(centre, lerp(a, b, t))).toBeGreaterThanOrEqual(grooveDistance + diameter / 2 + 4 - 0.03);
  }
  expect(Math.min(...holes.flatMap((a, i) => holes.slice(i + 1).map((b) => distance(a.centre, b.centre))))).toBeGreaterThanOrEqual(diameter + grooveDistance - 1e-9);
});

it('slides a hole along the line no farther than it must, and leaves out and names one with no clear place in reach', () => {
  const across = outputsOf(setWidth, { strokes: [{ path: line([460, -50], [460, 100]) }] }, { width: 40 }).channel;
  const params = { pattern: 'a number along the outline', count: 6, edgeDistance: 20, diameter: 6, grooveDistance: 27 } as const;
  // The groove's wall stands at x 480: its end reaches y 100, so the clear place begins at 480 + 27 + 3.
  const { holes } = outputsOf(drillPattern, { channel: across, board: wide, others: [] }, { ...params, reach: 30 });
  expect(holes[1]!.centre.x).toBeGreaterThanOrEqual(510 - 0.02);
  expect(holes[1]!.centre.x).toBeLessThanOrEqual(511);
  const short = outcomeOf(drillPattern, { channel: across, board: wide, others: [] }, { ...params, reach: 5 });
  expect(short).toMatchObject({ ok: true, cautions: [{ place: 'reach', found: '(500.0, 20.0) mm, which is not', expected: 'a place clear of grooves, edges and other holes within 5 mm along the outline' }] });
  expect(short.ok && short.outputs.holes).toHaveLength(5);
});

it('leaves out what would stand too near to a hole that is there', () => {
  const { holes } = outputsOf(drillPattern, open, { pattern: 'a number along the outline', count: 40, edgeDistance: 20, grooveDistance: 150, diameter: 6, reach: 10 });
  expect(holes.length).toBeLessThan(40);
  expect(Math.min(...holes.flatMap((a, i) => holes.slice(i + 1).map((b) => distance(a.centre, b.centre))))).toBeGreaterThanOrEqual(156);
});
