import '../src/values/types.ts';
import { lengthenPath, offsetPaths, trimPath } from '../src/geometry/index.ts';
import { defineNode } from '../src/runtime/index.ts';

export default defineNode({
  name: 'set-width',
  title: 'Set width',
  doc: 'Every stroke becomes a groove of one width, round at its ends. Joins are round too, so the groove keeps its width through every curve and corner.',
  inputs: { strokes: { type: 'strokes', doc: 'Centre lines of the groove.' } },
  outputs: {
    channel: { type: 'channel', doc: 'The groove: its centre lines, region, width and depth.' },
    region: { type: 'region', doc: 'The groove\'s region alone.' },
  },
  params: {
    width: { kind: 'number', unit: 'mm', default: 10, min: 0.5, max: 100, step: 0.1, label: 'Width', doc: 'Width of the groove: the outer width of the diffuser tube and its fit.' },
    depth: { kind: 'number', unit: 'mm', default: 6, min: 0.1, max: 100, step: 0.1, label: 'Depth', doc: 'Depth of the groove below the sheet\'s top face.' },
    longerEnds: { kind: 'number', unit: 'mm', default: 0, min: -100, max: 100, step: 0.5, label: 'Longer ends', doc: 'Length added to each free end of a stroke; negative shortens it.' },
    tolerance: { kind: 'number', unit: 'mm', default: 0.002, min: 0.001, max: 0.1, step: 0.001, label: 'Tolerance', doc: 'Greatest distance between the true groove and the polygon that stands for it; half the fit tolerance of the passes or less lets them find its arcs.' },
  },
  examples: [{
    title: 'one straight groove',
    inputs: { strokes: [{ path: { start: { x: 0, y: 0 }, segments: [{ kind: 'line', end: { x: 200, y: 0 } }], closed: false } }] },
  }],
  compute({ strokes }, { width, depth, longerEnds, tolerance }) {
    const changed = strokes.map(({ path }) => (path.closed ? path : longerEnds < 0 ? trimPath(path, -longerEnds) : lengthenPath(path, longerEnds)));
    const centreLines = changed.filter((path) => path !== undefined);
    const lost = changed.length - centreLines.length;
    const region = offsetPaths(centreLines, width / 2, { cap: 'round', join: 'round', miterLimit: 2, tolerance });
    return {
      ok: true,
      outputs: { channel: { centreLines, region, width, depth, tolerance }, region },
      cautions: lost === 0 ? [] : [{ place: 'longerEnds', expected: 'strokes longer than what is taken off their ends', found: `${lost} too short, which are gone`, advice: 'Shorten the ends less.' }],
    };
  },
});
