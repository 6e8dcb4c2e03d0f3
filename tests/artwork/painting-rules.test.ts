import { describe, expect, it } from 'vitest';
import { flattenPath, regionArea, regionFromLoops } from '../../src/geometry/index.ts';
import { corners, found, readPage } from './support.ts';

const OPEN = 'M0 0H10V10';
const CLOSED = 'M0 0H10V10Z';

/** Counts of strokes and outlines, and what the cautions found. */
function outcome(attributes: string, d: string) {
  const drawing = readPage(`<path d="${d}" ${attributes}/>`);
  return [drawing.strokes.length, drawing.outlines.length, ...found(drawing)];
}

describe('what becomes of a path', () => {
  it.each([
    ['stroke="red" fill="none"', OPEN, [1, 0]],
    ['stroke="red" fill="none"', CLOSED, [1, 0]],
    ['stroke="red"', OPEN, [1, 0]],
    ['stroke="red"', CLOSED, [1, 1]],
    ['stroke="red" fill="blue"', CLOSED, [1, 1]],
    ['stroke="red" fill="blue"', OPEN, [1, 0, '1 open path with a fill']],
    ['', OPEN, [1, 0]],
    ['', CLOSED, [0, 1]],
    ['fill="blue"', OPEN, [1, 0, '1 open path with a fill']],
    ['fill="blue"', CLOSED, [0, 1]],
    ['fill="blue"', 'M0 0H10V10L0 0', [0, 1]],
    ['fill="blue"', 'M0 0H10V10L0 .0005', [0, 1]],
    ['fill="blue"', 'M0 0H10V10L0 .01', [1, 0, '1 open path with a fill']],
    ['', 'M0 0H10V10L0 0', [1, 0]],
    ['fill="none"', OPEN, [1, 0, '1 path with neither']],
    ['fill="none"', CLOSED, [1, 0, '1 path with neither']],
    ['fill="none" stroke="none"', `${CLOSED}${OPEN}`, [2, 0, '2 paths with neither']],
    ['', `${CLOSED}${OPEN}`, [1, 1]],
    ['fill="blue"', `${CLOSED}M2 1V2H3Z`, [0, 1]],
    ['fill="transparent"', CLOSED, [1, 0, '1 path with neither']],
    ['fill="#0000"', CLOSED, [1, 0, '1 path with neither']],
    ['fill="rgba(1, 2, 3, 0)"', CLOSED, [1, 0, '1 path with neither']],
    ['fill="rgb(1 2 3 / 0%)"', CLOSED, [1, 0, '1 path with neither']],
    ['fill="rgb(1, 2, 0)"', CLOSED, [0, 1]],
    ['fill="#f000" stroke="#000"', CLOSED, [1, 0]],
    ['fill="red" fill-opacity="0" stroke="red" stroke-opacity="0.0"', CLOSED, [1, 0, '1 path with neither']],
    ['fill="currentColor" color="transparent"', CLOSED, [1, 0, '1 path with neither']],
    ['fill="none" stroke="currentColor"', CLOSED, [1, 0]],
    ['fill="none" stroke="url(#x)"', CLOSED, [1, 0, '1 gradient or pattern as paint']],
    ['fill="none" stroke="red" stroke-width="0"', CLOSED, [1, 0, '1 line of width zero']],
  ])('%s %s', (attributes, d, expected) => {
    expect(outcome(attributes, d)).toEqual(expected);
  });

  it('keeps a stroke\'s width only when it is drawn with one', () => {
    const widths = (attributes: string) => readPage(`<path d="${OPEN}" ${attributes}/>`).strokes.map(({ width }) => width?.toFixed(6));
    expect(widths('stroke="red" stroke-width="2.5"')).toEqual(['2.500000']);
    expect(widths('stroke="red" stroke-width="1cm"')).toEqual([(96 / 2.54).toFixed(6)]);
    expect(widths('stroke="red"')).toEqual(['1.000000']);
    expect(widths('stroke="red" stroke-width="0"')).toEqual([undefined]);
    expect(widths('stroke="red" stroke-width="-2"')).toEqual(['1.000000']);
    expect(widths('')).toEqual([undefined]);
    expect(widths('fill="none"')).toEqual([undefined]);
  });

  it('names each by its id, or by its element and number', () => {
    const { strokes, outlines } = readPage(`<path d="${OPEN}"/><path id="tail" d="${OPEN}"/><g><path d="${CLOSED}"/></g>`);
    expect([...strokes, ...outlines].map(({ source }) => source)).toEqual(['path 1', 'tail', 'path 3']);
  });
});

describe('places without length', () => {
  it.each([
    ['M5 5h0', [[[5, 5]]], '1 dot'], ['M5 5z', [[[5, 5]]], '1 dot'], ['M5 5L5 5z', [[[5, 5]]], '1 dot'],
    ['M5 5C5 5 5 5 5 5', [[[5, 5]]], '1 dot'], ['M5 5A1 1 0 0 0 5 5', [[[5, 5]]], '1 dot'],
    ['M5 5', [], '1 place moved to but not drawn from'],
    ['M5 5M6 6M7 7H9', [[[7, 7], [9, 7]]], '2 places moved to but not drawn from'],
  ])('%s', (d, expected, caution) => {
    for (const attributes of ['stroke="red" fill="none"', 'stroke="red" stroke-linecap="round"']) {
      const drawing = readPage(`<path d="${d}" ${attributes}/>`);
      expect(drawing.strokes.map(({ path }) => corners(path))).toEqual(expected);
      expect(found(drawing)).toEqual([caution]);
      expect(drawing.outlines).toEqual([]);
    }
  });
  it('a dot is open and has no segments', () => {
    expect(readPage('<path d="M5 5z"/>').strokes[0]!.path).toMatchObject({ segments: [], closed: false });
    expect(readPage('<line x1="5" x2="5" stroke="red"/>').strokes[0]!.path.segments).toEqual([]);
  });
});

// SVG 2, section 13.3.2, and its figures of nested squares.
describe('the fill rule', () => {
  const SAME_WAY = 'M0 0H30V30H0ZM10 10H20V20H10Z';
  const OPPOSITE = 'M0 0H30V30H0ZM10 10V20H20V10Z';
  it.each([['nonzero', SAME_WAY, 900], ['evenodd', SAME_WAY, 800], ['nonzero', OPPOSITE, 800], ['evenodd', OPPOSITE, 800], ['', SAME_WAY, 900]])(
    '%s %s', (rule, d, area) => {
      const [outline] = readPage(`<path d="${d}" ${rule === '' ? '' : `fill-rule="${rule}"`}/>`).outlines;
      const loops = outline!.paths.map((path) => flattenPath(path, 0.01));
      expect(regionArea(regionFromLoops(loops, outline!.fillRule))).toBeCloseTo(area, 3);
    });
});
