import { expect, it } from 'vitest';
import { signGroups } from '../../src/values/draw.ts';
import { describeValue } from '../../src/values/index.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_CUTTER, EXAMPLE_LIGHTING, EXAMPLE_MACHINE, EXAMPLE_STOCK, EXAMPLE_STRIP, EXAMPLE_TUBE } from '../../src/values/examples.ts';
import { circle, line } from '../support/shapes.ts';

const strokes = [{ path: line([0, 0], [1500, 0]) }, { path: line([0, 10], [300, 10]) }];
const hole = { centre: { x: 5, y: 6 }, diameter: 8, purpose: 'cable' } as const;

it('tells a person what came out, in words and with units', () => {
  expect(describeValue('strokes', strokes)).toBe('2 strokes, 1.8 m');
  expect(describeValue('strokes', strokes.slice(0, 1))).toBe('1 stroke, 1.5 m');
  expect(describeValue('region', EXAMPLE_BOARD)).toBe('1 loop, 300 cm²');
  expect(describeValue('channel', EXAMPLE_CHANNEL)).toBe('1 groove 10 mm wide, 6 mm deep');
  expect(describeValue('stock', EXAMPLE_STOCK)).toBe('400 x 200 x 12 mm');
  expect(describeValue('cutter', EXAMPLE_CUTTER)).toBe('6 mm cutter, 1800 mm/min');
  expect(describeValue('machine', EXAMPLE_MACHINE)).toBe('900 x 600 mm of travel');
  expect(describeValue('strip', EXAMPLE_STRIP)).toBe('strip 10 W/m at 24 V, modules of 50 mm, 3000 K');
  expect(describeValue('tube', EXAMPLE_TUBE)).toBe('tube 10 x 10 mm, bends to 15 mm');
  expect(describeValue('lighting', EXAMPLE_LIGHTING)).toBe('1 run, 0.2 m of strip, 2 W');
  expect(describeValue('lighting', { ...EXAMPLE_LIGHTING, wiring: { supplies: [], wires: [], drops: [] } })).toBe('1 run, 0.2 m of strip, 2 W, 0 supplies');
  expect(describeValue('passes', [])).toBe('0 passes');
  expect(describeValue('set-ups', [])).toBe('0 set-ups, 0 programs, 0 min');
  expect(describeValue('files', [])).toBe('no file');
  expect(describeValue('text', 'open')).toBe('“open”');
});

it('draws the centre lines of a groove as strokes, apart from the artwork', () => {
  const groups = signGroups({ artwork: { strokes, outlines: [] }, channel: EXAMPLE_CHANNEL, board: EXAMPLE_BOARD, holes: [hole] });
  expect(groups.map(({ id, items }) => [id, items.length])).toEqual([['artwork', 2], ['strokes', 1], ['channel', 1], ['board', 1], ['holes', 1], ['seams', 0]]);
});

it('writes centre lines as cubics, whatever they were', () => {
  const channel = { ...EXAMPLE_CHANNEL, centreLines: [line([0, 0], [9, 0]), circle(50, 50, 20)] };
  const [, strokes] = signGroups({ artwork: { strokes: [], outlines: [] }, channel, board: undefined, holes: [] });
  const kinds = strokes!.items.flatMap((item) => (item.kind === 'stroke' ? item.stroke.path.segments.map(({ kind }) => kind) : ['none']));
  expect(new Set(kinds)).toEqual(new Set(['cubic']));
});
