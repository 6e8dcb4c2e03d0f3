import { describe, expect, it } from 'vitest';
import { corners, found, page, read, readPage, tidy } from './support.ts';

/** Where the point 10, 20 goes, y down. */
function moved(transform: string, attribute = 'transform'): readonly [number, number] {
  const { strokes } = readPage(`<path ${attribute}="${transform}" d="M10 20h1" fill="none" stroke="black"/>`);
  return corners(strokes[0]!.path)[0]!;
}

// SVG 1.1, section 7.6; the CSS ones from CSS Transforms 1, section 11. Worked by hand for the point 10, 20.
describe('each function moves a point as the standard says', () => {
  it.each([
    ['matrix(1 2 3 4 5 6)', [75, 106]],
    ['translate(1,2)', [11, 22]], ['translate(5)', [15, 20]], ['translateX(1px)', [11, 20]], ['translateY(1in)', [10, 116]],
    ['scale(2)', [20, 40]], ['scale(2 .5)', [20, 10]], ['scaleX(3)', [30, 20]], ['scaleY(50%)', [10, 10]],
    ['rotate(90)', [-20, 10]], ['rotate(90 10 10)', [0, 10]], ['rotate(.25turn)', [-20, 10]], ['rotate(100grad)', [-20, 10]],
    ['rotate(-1.5707963267948966rad)', [20, -10]],
    ['skewX(45)', [30, 20]], ['skewY(45)', [10, 30]], ['skew(45deg)', [30, 20]], ['skew(45 -45)', [30, 10]],
    ['translate(1 2) scale(2)', [21, 42]], ['translate(1-2),scale(2)', [21, 38]], ['scale(2)translate(1 2)', [22, 44]],
    ['  none ', [10, 20]], ['', [10, 20]],
  ])('%s', (transform, expected) => {
    expect(moved(transform)).toEqual(expected);
  });

  it('also as a property of a style', () => {
    expect(moved('transform: rotate(90deg)', 'style')).toEqual([-20, 10]);
    expect(moved('transform-origin: 10px 10px; transform: rotate(90deg)', 'style')).toEqual([0, 10]);
    expect(moved('transform-origin: center; transform: rotate(180deg)', 'style')).toEqual([90, 80]);
    expect(moved('transform-origin: top 10px; transform: scale(2)', 'style')).toEqual([10, 20].map((v, i) => (i === 0 ? 10 : 2 * v)));
  });
});

it.each(['rotate(10 20)', 'scale()', 'scale(1 2 3)', 'translate(1 2', 'translate3d(1px, 2px, 3px)', 'scale(2) rubbish', 'rotate(5furlong)'])(
  '%s moves nothing and is named', (transform) => {
    const drawing = readPage(`<path transform="${transform}" d="M10 20h1" fill="none" stroke="black"/>`);
    expect(corners(drawing.strokes[0]!.path)[0]).toEqual([10, 20]);
    expect(found(drawing)).toEqual([`1 transform not understood: ${transform}`]);
  });

it('nested transforms apply from the inside out', () => {
  const body = '<g transform="translate(10 0)"><a transform="scale(2)"><path transform="rotate(90)" d="M1 2h1" stroke="black" fill="none"/></a></g>';
  expect(corners(readPage(body).strokes[0]!.path)).toEqual([[6, 2], [6, 4]]);
});

it('a transform of the root applies outside its view box', () => {
  const { strokes } = read(page('<path d="M1 1h1" stroke="black" fill="none"/>', 'width="96px" height="96px" viewBox="0 0 48 48" transform="translate(24 0)"'));
  expect(tidy(strokes[0]!.path.start.x)).toBeCloseTo((26 * 25.4) / 96);
});

describe('the width of a line', () => {
  const widthOf = (transform: string, more = '') => {
    const drawing = readPage(`<g transform="${transform}"><path d="M0 0h9" stroke="black" stroke-width="2" fill="none" ${more}/></g>`);
    return { width: tidy(drawing.strokes[0]!.width ?? NaN), cautions: found(drawing).length };
  };
  it('grows with the scale, and turning or mirroring leaves it alone', () => {
    expect(widthOf('scale(3)')).toEqual({ width: 6, cautions: 0 });
    expect(widthOf('rotate(33) scale(-3 3)')).toEqual({ width: 6, cautions: 0 });
  });
  it('is the geometric mean under any other transform, with a caution', () => {
    expect(widthOf('scale(2 8)')).toEqual({ width: 8, cautions: 1 });
    expect(widthOf('skewX(45)')).toEqual({ width: 2, cautions: 1 });
  });
  it('may be kept apart from the scale', () => {
    expect(widthOf('scale(2 8)', 'vector-effect="non-scaling-stroke"')).toEqual({ width: tidy((2 * 25.4) / 96), cautions: 0 });
  });
});

it('arcs stay arcs when turned, mirrored and scaled, and become cubics when squeezed', () => {
  const kinds = (transform: string) => readPage(`<circle transform="${transform}" cx="9" r="5"/>`).outlines[0]!.paths[0]!.segments.map(({ kind }) => kind);
  expect(kinds('rotate(33) scale(-3 3) translate(1 2)')).toEqual(['arc', 'arc', 'arc', 'arc']);
  expect(new Set(kinds('scale(2 3)'))).toEqual(new Set(['cubic']));
});

it('a mirrored circle still passes through its quarter points', () => {
  const { outlines } = readPage('<circle transform="translate(100 0) scale(-1 1)" cx="30" cy="40" r="10"/>');
  expect(corners(outlines[0]!.paths[0]!)).toEqual([[60, 40], [70, 50], [80, 40], [70, 30], [60, 40]]);
  expect(outlines[0]!.paths[0]!.segments[0]).toMatchObject({ kind: 'arc', clockwise: false });
});

it.each(['scale(0)', 'scale(1 0)', 'matrix(1 1 1 1 0 0)', 'scale(1e-300)'])('%s presses a shape to nothing, which is named', (transform) => {
  const drawing = readPage(`<circle transform="${transform}" r="5"/>`);
  expect(drawing.outlines).toEqual([]);
  expect(found(drawing)).toEqual(['1 element pressed to nothing by its transform']);
});
