import { describe, expect, it } from 'vitest';
import { flattenPath, makeSegmentIndex, type Region } from '../../src/geometry/index.ts';
import { traceOutlines } from '../../src/lettering/index.ts';
import { errorsOf } from './truth/compare.ts';
import * as truth from './truth/index.ts';

const CELL = truth.W / 40;
const regionOf = ({ outlines }: truth.Truth): Region => ({ loops: outlines.flatMap(({ paths }) => paths.map((path) => flattenPath(path, 1e-3))) });

it('measures the distance to the nearest cell outside', () => {
  const grid = truth.distanceGrid(regionOf(truth.stadium()), 0.25);
  expect(Math.abs(Math.max(...grid.distances) * grid.cell - truth.W / 2)).toBeLessThan(0.25);
  const { columns, distances } = grid;
  const row = Math.round((0 - grid.origin.y) / grid.cell);
  expect(distances[row * columns]).toBe(0);
});

/** An oracle that shares nothing with the tracing: no triangles, no pruning, no fitting. It knows lines to about a third of a cell. */
describe('the ridge of a fine raster\'s distances lies on the traced strokes, and they on it', () => {
  it.each([truth.uprightS(), truth.arch(), truth.taper(), truth.annulus(), truth.wave(21)])('$name', (shape) => {
    const { strokes } = traceOutlines(shape.outlines, {}, () => undefined);
    const segments = strokes.flatMap(({ path }) => {
      const points = flattenPath(path, 1e-3);
      return points.slice(1).map((to, i) => ({ from: points[i]!, to }));
    });
    const places = truth.ridge(truth.distanceGrid(regionOf(shape), CELL));
    const toStroke = makeSegmentIndex(segments);
    const errors = errorsOf(places.map(({ point }) => toStroke.nearest(point, Infinity)!.distance));
    expect(places.length).toBeGreaterThan(200);
    expect(errors.mean).toBeLessThan(CELL / 3);
    expect(errors.p95).toBeLessThan(CELL);
    const toRidge = makeSegmentIndex(places.map(({ point }) => ({ from: point, to: point })));
    const back = errorsOf(segments.map(({ from }) => toRidge.nearest(from, Infinity)!.distance));
    expect(back.p95).toBeLessThan(2 * CELL);
  });
});
