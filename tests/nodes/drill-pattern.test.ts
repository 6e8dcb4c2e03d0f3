import { expect, it } from 'vitest';
import drillPattern from '../../nodes/drill-pattern.ts';
import setWidth from '../../nodes/set-width.ts';
import { distance, makeRegionIndex } from '../../src/geometry/index.ts';
import { outcomeOf, outputsOf, problemsOf } from '../support/run-node.ts';
import { circle, line, rectangle } from '../support/shapes.ts';

const board = rectangle(0, 0, 400, 200);
const { channel } = outputsOf(setWidth, { strokes: [{ path: line([100, 100], [300, 100]) }, { path: line([300, 103], [300, 160]) }, { path: circle(200, 150, 20) }] }, { width: 10 });
const centres = (outputs: { holes: readonly { centre: { x: number; y: number } }[] }) => outputs.holes.map(({ centre }) => [Math.round(centre.x * 100) / 100, Math.round(centre.y * 100) / 100]);

it('puts one hole at each end of a stroke, one on a closed stroke, and lets ends that meet share one', () => {
  const found = outputsOf(drillPattern, { channel, board: undefined }, { pattern: 'ends of strokes', diameter: 5, purpose: 'cable' });
  expect(centres(found)).toEqual([[100, 100], [300, 100], [300, 160], [220, 150]]);
  expect(found.holes[0]).toMatchObject({ diameter: 5, purpose: 'cable' });
});

it('puts holes in the corners at the edge distance', () => {
  expect(centres(outputsOf(drillPattern, { channel, board }, { pattern: 'corners', edgeDistance: 15 }))).toEqual([[15, 15], [385, 15], [385, 185], [15, 185]]);
});

it('spaces holes along the outline at most a pitch apart, clear of the groove', () => {
  const { holes } = outputsOf(drillPattern, { channel, board }, { pattern: 'along the outline', pitch: 100, edgeDistance: 20, diameter: 6, grooveDistance: 8 });
  const groove = makeRegionIndex(channel.region);
  expect(holes.length).toBe(Math.ceil((2 * (360 + 160)) / 100));
  for (const { centre } of holes) expect(groove.distanceToBoundary(centre)).toBeGreaterThanOrEqual(8 + 3 - 0.05);
  expect(Math.min(...holes.flatMap((a, i) => holes.slice(i + 1).map((b) => distance(a.centre, b.centre))))).toBeGreaterThan(60);
});

it('moves a hole along the outline when the groove is in its way', () => {
  const near = outputsOf(setWidth, { strokes: [{ path: line([150, 30], [250, 30]) }] }, { width: 10 }).channel;
  const { holes } = outputsOf(drillPattern, { channel: near, board }, { pattern: 'along the outline', pitch: 180, edgeDistance: 20 });
  const groove = makeRegionIndex(near.region);
  for (const { centre } of holes) expect(groove.distanceToBoundary(centre)).toBeGreaterThan(10.9);
});

it('keeps every hole put by hand and names those that are not clear', () => {
  const outcome = outcomeOf(drillPattern, { channel, board }, { pattern: 'by hand', places: [{ x: 40, y: 40 }, { x: 200, y: 100 }, { x: 500, y: 0 }] });
  expect(outcome).toMatchObject({ ok: true, outputs: { holes: [{}, {}, {}] }, cautions: [{ found: '(200.0, 100.0) mm, which is not' }, { found: '(500.0, 0.0) mm, which is not' }] });
});

it('says so when there is no room for any hole', () => {
  expect(problemsOf(drillPattern, { channel, board }, { pattern: 'corners', edgeDistance: 150 })[0]).toMatchObject({ place: 'pattern', found: 'none' });
});
