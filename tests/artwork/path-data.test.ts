import { describe, expect, it } from 'vitest';
import { type Path } from '../../src/geometry/index.ts';
import { corners, found, readPage, strokeOf, tidy } from './support.ts';

/** Control points turned back to y down. */
const controls = (path: Path) => path.segments.flatMap((s) => s.kind === 'cubic' ? [[s.control1, s.control2].map(({ x, y }) => [tidy(x), tidy(100 - y)])] : []);

// SVG 2, section 9.3: the grammar takes as many characters for a number as it can.
describe('compact numbers', () => {
  it.each([
    ['M100-200 0 0', [[100, -200], [0, 0]]],
    ['M 0.6.5 0 0', [[0.6, 0.5], [0, 0]]],
    ['M10-20-5-.5', [[10, -20], [-5, -0.5]]],
    ['M.5.5.25.75', [[0.5, 0.5], [0.25, 0.75]]],
    ['M1e1-1e-1+5+5E0', [[10, -0.1], [5, 5]]],
    ['M1,2,3,4', [[1, 2], [3, 4]]],
    ['  M 1\n2\t, 3\r4  ', [[1, 2], [3, 4]]],
  ])('%s', (d, expected) => {
    const drawing = readPage(`<path d="${d}" stroke="black" fill="none"/>`);
    expect(drawing.strokes.map(({ path }) => corners(path))).toEqual([expected]);
    expect(drawing.cautions).toEqual([]);
  });

  it('takes arc flags as single characters', () => {
    expect(corners(strokeOf('M0 0a5 5 0 0110 10'))).toEqual([[0, 0], [10, 10]]);
    expect(corners(strokeOf('M0 0a5 5 0 0 1 10 10 5,5,0,1,1,-10-10'))).toEqual([[0, 0], [10, 10], [0, 0]]);
    expect(strokeOf('M0 0a10 10 0 0110 10').segments[0]).toMatchObject({ kind: 'arc', clockwise: true });
    expect(strokeOf('M0 0a10 10 0 0010 10').segments[0]).toMatchObject({ kind: 'arc', clockwise: false });
  });
});

describe('commands', () => {
  it.each([
    ['pairs after a move are lines', 'M1 2 3 4 5 6', [[1, 2], [3, 4], [5, 6]]],
    ['pairs after a relative move are relative lines', 'm1 2 3 4 5 6', [[1, 2], [4, 6], [9, 12]]],
    ['lines repeat', 'M1 1L2 2 3 3l1 0 0 1', [[1, 1], [2, 2], [3, 3], [4, 3], [4, 4]]],
    ['horizontal and vertical lines repeat', 'M1 1H5 6V7h1 1v-1', [[1, 1], [5, 1], [6, 1], [6, 7], [7, 7], [8, 7], [8, 6]]],
    ['a closed path ends where it starts', 'M1 1H5V5z', [[1, 1], [5, 1], [5, 5], [1, 1]]],
    ['a closing line of no length is not written twice', 'M1 1H5V5L1 1z', [[1, 1], [5, 1], [5, 5], [1, 1]]],
    ['lines of no length are left out', 'M1 1h0L5 5l0 0', [[1, 1], [5, 5]]],
  ])('%s', (_claim, d, expected) => {
    expect(corners(strokeOf(d))).toEqual(expected);
  });

  it('start a relative move where the path before was closed', () => {
    const { strokes } = readPage('<path d="M10 10h5v5z m20 0h5" fill="none" stroke="black"/><path d="M10 10h5v5zl3 3" fill="none" stroke="black"/>');
    expect(strokes.map(({ path }) => corners(path)[0])).toEqual([[10, 10], [30, 10], [10, 10], [10, 10]]);
    expect(strokes.map(({ path }) => path.closed)).toEqual([true, false, true, false]);
  });

  it('draw cubics, and mirror the control point of the one before', () => {
    const path = strokeOf('M0 0C0 10 10 10 10 0S20-10 20 0s10 10 10 0');
    expect(controls(path)).toEqual([[[0, 10], [10, 10]], [[10, -10], [20, -10]], [[20, 10], [30, 10]]]);
    expect(corners(path)).toEqual([[0, 0], [10, 0], [20, 0], [30, 0]]);
  });

  it('mirror nothing after another kind of command', () => {
    expect(controls(strokeOf('M0 0L10 0S20 10 20 0'))).toEqual([[[10, 0], [20, 10]]]);
    expect(controls(strokeOf('M0 0Q5 9 10 0S20 10 20 0'))[1]).toEqual([[10, 0], [20, 10]]);
    expect(controls(strokeOf('M0 0C0 9 10 9 10 0T22 0'))[1]).toEqual([[10, 0], [14, 0]]);
    for (const between of ['L20 0', 'Q15 9 20 0', 'A9 9 0 0 1 20 0', 'ZM20 0']) {
      const { strokes } = readPage(`<path d="M0 0C0 9 10 9 10 0${between}S30 10 30 0" fill="none" stroke="red"/>`);
      expect(controls(strokes.at(-1)!.path).at(-1)).toEqual([[20, 0], [30, 10]]);
    }
    expect(controls(strokeOf('M0 0Q5 9 10 0L20 0T32 0'))[1]).toEqual([[20, 0], [24, 0]]);
  });

  it('raise quadratics to the same cubics', () => {
    // Control points two thirds of the way to the quadratic's: (0,0) (6,12) (12,0), then mirrored to (18,-12).
    expect(controls(strokeOf('M0 0Q6 12 12 0T24 0'))).toEqual([[[4, 8], [8, 8]], [[16, -8], [20, -8]]]);
    expect(controls(strokeOf('m0 0q6 12 12 0t12 0'))).toEqual([[[4, 8], [8, 8]], [[16, -8], [20, -8]]]);
  });
});

// SVG 2, section 9.5.4: a path is drawn up to the first error.
describe('faulty data are drawn up to the fault', () => {
  it.each([
    ['M0 0L10 10 20', [[0, 0], [10, 10]]],
    ['M0 0L10 10 X 5 5', [[0, 0], [10, 10]]],
    ['M0 0L10 10 L', [[0, 0], [10, 10]]],
    ['M0 0L10 10 A5 5 0 2 0 30 30', [[0, 0], [10, 10]]],
    ['M0 0L10 10 # L30 30', [[0, 0], [10, 10]]],
    ['M0 0L10 10,,20 20', [[0, 0], [10, 10]]],
    ['M0 0C1 1 2 2 3 3 4 4 5 5 6', [[0, 0], [3, 3]]],
  ])('%s', (d, expected) => {
    const drawing = readPage(`<path id="broken" d="${d}" fill="none" stroke="black"/>`);
    expect(drawing.strokes.map(({ path }) => corners(path))).toEqual([expected]);
    expect(drawing.cautions).toHaveLength(1);
    expect(drawing.cautions[0]!.place).toBe('broken (line 1)');
    expect(drawing.cautions[0]!.found).toMatch(/^1 fault in path data: /);
  });

  it('and data that do not begin with a move draw nothing', () => {
    const drawing = readPage('<path d="L10 10" stroke="black"/>');
    expect(drawing.strokes).toEqual([]);
    expect(found(drawing)).toEqual(['1 fault in path data: L10 10']);
  });

  it('and empty data draw nothing, without a word', () => {
    expect(readPage('<path d=""/><path/><path d=" "/>')).toMatchObject({ strokes: [], outlines: [], cautions: [] });
  });
});
