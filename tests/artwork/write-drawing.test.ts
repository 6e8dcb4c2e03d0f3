import { describe, expect, it } from 'vitest';
import { type DrawingItem, writeDrawing } from '../../src/artwork/index.ts';
import { type Path } from '../../src/geometry/index.ts';
import { seeded } from '../support/random.ts';
import { distanceBetween, read } from './support.ts';

const SIZE = { width: 120, height: 80 };
const write = (...items: DrawingItem[]) => writeDrawing({ size: SIZE, groups: [{ id: 'strokes', items }] });
const line = (x: number, y: number) => ({ kind: 'line', end: { x, y } }) as const;
const stroke = (path: Path, width?: number): DrawingItem => ({ kind: 'stroke', stroke: width === undefined ? { path } : { path, width } });

const CUBIC: Path = { start: { x: 10, y: 10 }, closed: false, segments: [{ kind: 'cubic', control1: { x: 10, y: 60 }, control2: { x: 50.12346, y: 60 }, end: { x: 50, y: 10 } }] };
const HALF: Path = { start: { x: 30, y: 40 }, closed: false, segments: [{ kind: 'arc', centre: { x: 40, y: 40 }, end: { x: 50, y: 40 }, clockwise: true }] };
const CIRCLE: Path = { start: { x: 70, y: 40 }, closed: true, segments: [{ kind: 'arc', centre: { x: 60, y: 40 }, end: { x: 70, y: 40 }, clockwise: false }] };
const TRIANGLE: Path = { start: { x: 0, y: 0 }, closed: true, segments: [line(30, 0), line(0, 20), line(0, 0)] };
const DOT: Path = { start: { x: 5, y: 6 }, closed: false, segments: [] };

describe('a written drawing', () => {
  it('states its size in mm and its groups, empty ones too, y down', () => {
    const text = writeDrawing({ size: SIZE, groups: [{ id: 'artwork', items: [] }, { id: 'strokes', items: [stroke(CUBIC, 2)] }, { id: 'holes', items: [] }] });
    expect(text).toBe(`<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="120mm" height="80mm" viewBox="0 0 120 80">
  <g id="artwork"/>
  <g id="strokes">
    <path d="M10 70C10 20 50.1235 20 50 70" fill="none" stroke="#1f2933" stroke-width="2" stroke-linecap="round" stroke-linejoin="round"/>
  </g>
  <g id="holes"/>
</svg>
`);
  });

  it('keeps arcs as arcs of a quarter turn at most, and the way they turn', () => {
    // From the left over the top to the right, which is clockwise on the screen: sweep 1.
    expect(write(stroke(HALF))).toContain('d="M30 40A10 10 0 0 1 40 30A10 10 0 0 1 50 40"');
    expect(write(stroke(CIRCLE)).match(/A10 10 0 0 0 /g)).toHaveLength(4);
  });

  it('draws regions by evenodd, circles, outlines by their own rule, and dots', () => {
    const square = [{ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 10, y: 10 }, { x: 0, y: 10 }];
    expect(write({ kind: 'region', region: { loops: [square] } })).toContain('d="M0 80L10 80L10 70L0 70Z" fill-rule="evenodd" fill="#cbd2d9" stroke="none"/>');
    expect(write({ kind: 'circle', centre: { x: 5, y: 5 }, radius: 2.5 })).toContain('<circle cx="5" cy="75" r="2.5" fill="none"');
    expect(write({ kind: 'outline', outline: { paths: [TRIANGLE], fillRule: 'nonzero' } })).toContain('d="M0 80L30 80L0 60Z" fill-rule="nonzero"');
    expect(write(stroke(DOT))).toContain('d="M5 74L5 74"');
  });

  it('writes text upright where its baseline begins, and dashes', () => {
    expect(write({ kind: 'text', at: { x: 10, y: 20 }, size: 5, text: 'run 1 & 2', style: { fill: '#000' } })).toContain('<text x="10" y="60" font-family="sans-serif" font-size="5" fill="#000" stroke="none">run 1 &amp; 2</text>');
    expect(write({ ...stroke(DOT), style: { dash: [6, 3] } })).toContain('stroke-linejoin="round" stroke-dasharray="6 3"/>');
  });

  it('takes a style of the caller\'s choice and escapes all text', () => {
    const text = writeDrawing({
      size: SIZE,
      groups: [{ id: 'a"<b', items: [{ kind: 'circle', centre: { x: 0, y: 0 }, radius: 1, title: `<&>"'\u0000\ud800é`, style: { fill: 'red', stroke: 'none' } }] }],
    });
    expect(text).toContain('<g id="a&quot;&lt;b">');
    expect(text).toContain('fill="red" stroke="none"><title>&lt;&amp;&gt;&quot;&apos;\ufffd\ufffdé</title></circle>');
    expect(read(text).outlines).toHaveLength(1);
  });

  it.each([[0.00004, '0'], [-0.00004, '0'], [1e-9, '0'], [12.3, '12.3'], [100, '100'], [-0.5, '-0.5'], [1234567.00006, '1234567.0001'], [1e15, '1000000000000000']])(
    'prints %d as %s', (value, text) => {
      expect(write({ kind: 'circle', centre: { x: value, y: 0 }, radius: 1 })).toContain(`cx="${text}"`);
    });

  it.each([NaN, Infinity, -Infinity])('does not accept %d, which is the caller\'s mistake', (value) => {
    expect(() => write({ kind: 'circle', centre: { x: value, y: 0 }, radius: 1 })).toThrow(RangeError);
  });
});

describe('what is written is read again', () => {
  it.each([['a cubic', CUBIC], ['half a circle', HALF], ['a circle', CIRCLE], ['a triangle', TRIANGLE], ['a dot', DOT]])('%s within 0.001 mm', (_name, path) => {
    const { strokes, size } = read(write(stroke(path, 3.25)));
    expect(size).toEqual({ width: 120, height: 80 });
    expect(strokes).toHaveLength(1);
    expect(strokes[0]!.width).toBeCloseTo(3.25, 9);
    expect(strokes[0]!.path.closed).toBe(path.closed);
    expect(distanceBetween(strokes[0]!.path, path)).toBeLessThan(1e-3);
  });

  it('the same kinds and numbers of segments, arcs apart', () => {
    const { strokes } = read(write(stroke(CUBIC), stroke(TRIANGLE)));
    expect(strokes.map(({ path }) => path.segments.map(({ kind }) => kind))).toEqual([['cubic'], ['line', 'line', 'line']]);
  });

  it('an outline with its rule', () => {
    const { outlines } = read(write({ kind: 'outline', outline: { paths: [TRIANGLE, CIRCLE], fillRule: 'evenodd' } }));
    expect(outlines[0]!.fillRule).toBe('evenodd');
    expect(outlines[0]!.paths).toHaveLength(2);
    expect(distanceBetween(outlines[0]!.paths[1]!, CIRCLE)).toBeLessThan(1e-3);
  });

  it('random paths of lines, arcs and cubics, small and large', () => {
    const random = seeded(7);
    for (let i = 0; i < 24; i += 1) {
      const scale = [0.5, 20, 900][i % 3]!;
      const path = randomPath(random, scale);
      const { strokes } = read(writeDrawing({ size: { width: 2000, height: 1000 }, groups: [{ id: 'a', items: [stroke(path)] }] }));
      expect(distanceBetween(strokes[0]!.path, path)).toBeLessThan(1e-3);
    }
  });
});

function randomPath(random: () => number, scale: number): Path {
  const point = () => ({ x: scale * random() + 0.1, y: scale * random() + 0.1 });
  const start = point();
  let at = start;
  const segments = Array.from({ length: 4 }, (): Path['segments'][number] => {
    const kind = Math.floor(random() * 3);
    const from = at;
    at = point();
    if (kind === 0) return { kind: 'line', end: at };
    if (kind === 1) return { kind: 'cubic', control1: point(), control2: point(), end: at };
    const centre = point();
    const [radius, angle] = [Math.hypot(from.x - centre.x, from.y - centre.y), random() * 2 * Math.PI];
    at = { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
    return { kind: 'arc', centre, end: at, clockwise: random() < 0.5 };
  });
  return { start, segments, closed: false };
}
