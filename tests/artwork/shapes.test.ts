import { describe, expect, it } from 'vitest';
import { type Path, flattenPath } from '../../src/geometry/index.ts';
import { corners, found, readPage, refusal, page } from './support.ts';

const outline = (body: string): Path => readPage(body).outlines[0]!.paths[0]!;

/** Area by the shoelace formula; positive when counter-clockwise. */
function area(path: Path): number {
  const points = flattenPath(path, 1e-5);
  return points.reduce((sum, a, i) => {
    const b = points[(i + 1) % points.length]!;
    return sum + (a.x * b.y - b.x * a.y) / 2;
  }, 0);
}

describe('a rectangle', () => {
  it('is drawn from its upper left corner, clockwise', () => {
    expect(corners(outline('<rect x="10" y="20" width="30" height="40"/>'))).toEqual([[10, 20], [40, 20], [40, 60], [10, 60], [10, 20]]);
  });
  it('may have round corners, whose missing radius equals the other one', () => {
    for (const radii of ['rx="5"', 'ry="5"', 'rx="5" ry="5"', 'rx="5" ry="auto"']) {
      const path = outline(`<rect x="10" y="20" width="30" height="40" ${radii}/>`);
      expect(path.segments.map(({ kind }) => kind)).toEqual(['line', 'arc', 'line', 'arc', 'line', 'arc', 'line', 'arc']);
      expect(area(path)).toBeCloseTo(-(30 * 40 - (4 - Math.PI) * 25), 2);
    }
  });
  it('has radii of half its sides at most', () => {
    // An ellipse with half axes 15 and 20 is left over.
    expect(area(outline('<rect width="30" height="40" rx="99" ry="99"/>'))).toBeCloseTo(-Math.PI * 15 * 20, 2);
  });
  it('has sharp corners when either radius is zero', () => {
    expect(outline('<rect width="30" height="40" rx="0" ry="9"/>').segments).toHaveLength(4);
  });
});

it('circles are four quarter arcs, ellipses cubics', () => {
  const circle = outline('<circle cx="50" cy="40" r="10"/>');
  expect(circle.segments.map(({ kind }) => kind)).toEqual(['arc', 'arc', 'arc', 'arc']);
  expect(corners(circle)).toEqual([[60, 40], [50, 50], [40, 40], [50, 30], [60, 40]]);
  expect(area(circle)).toBeCloseTo(-Math.PI * 100, 2);
  expect(area(outline('<ellipse cx="50" cy="40" rx="20" ry="10"/>'))).toBeCloseTo(-Math.PI * 200, 2);
  expect(area(outline('<ellipse rx="20"/>'))).toBeCloseTo(-Math.PI * 400, 2);
});

it('lines, polylines and polygons join their points', () => {
  const { strokes, outlines } = readPage('<line x1="1" y1="2" x2="3" y2="4" stroke="red"/><polyline points="1,2 3,4,5 6" stroke="red" fill="none"/><polygon points="1,2 3,4 5-6"/>');
  expect(strokes.map(({ path }) => corners(path))).toEqual([[[1, 2], [3, 4]], [[1, 2], [3, 4], [5, 6]]]);
  expect(corners(outlines[0]!.paths[0]!)).toEqual([[1, 2], [3, 4], [5, -6], [1, 2]]);
  expect(outlines[0]!.paths[0]!.closed).toBe(true);
});

it('an odd number of coordinates leaves out the last one, with a caution', () => {
  const drawing = readPage('<polyline points="1 2 3 4 5" stroke="red" fill="none"/>');
  expect(corners(drawing.strokes[0]!.path)).toEqual([[1, 2], [3, 4]]);
  expect(found(drawing)).toEqual(['1 fault in path data']);
});

it.each(['<rect width="0" height="9"/>', '<rect height="9"/>', '<circle/>', '<circle r="-5"/>', '<ellipse rx="5" ry="0"/>'])('%s draws nothing and is named', (body) => {
  const drawing = readPage(body);
  expect(drawing).toMatchObject({ strokes: [], outlines: [] });
  expect(found(drawing)).toEqual(['1 shape of no size']);
});

it('a value that cannot be read counts as not stated, with a caution', () => {
  const drawing = readPage('<circle cx="left" cy="50" r="5"/>');
  expect(corners(drawing.outlines[0]!.paths[0]!)[0]).toEqual([5, 50]);
  expect(found(drawing)).toEqual(['1 value not understood: cx="left"']);
});

it.each([
  ['<circle id="bad" cx="NaN" r="5"/>', 'cx="NaN"'],
  ['<circle id="bad" cx="1e400" r="5"/>', 'cx="1e400"'],
  ['<circle id="bad" cx="1e308" r="5"/>', 'a point at'],
  ['<rect id="bad" width="1e308" height="1e308"/>', 'a point at'],
  ['<path id="bad" d="M0 0L1e308 1e308"/>', 'a point at'],
  ['<path id="bad" d="M0 0L1e400 0"/>', 'a point at'],
  ['<path id="bad" d="M0 0l1e308 0 1e308 0"/>', 'a point at'],
  ['<path id="bad" d="M0 0A1e308 1e308 0 1 1 5 5"/>', 'a point at'],
  ['<path id="bad" d="M0 0A1e308 1e300 30 1 1 5 5"/>', 'a point at'],
  ['<path id="bad" d="M0 0L NaN 5"/>', 'NaN 5'],
  ['<path id="bad" d="M0 0 -Infinity 5"/>', '-Infinity 5'],
  ['<polygon id="bad" points="0 0 NaN 5 6 7"/>', '0 0 NaN 5 6 7'],
  ['<path id="bad" transform="scale(1e308)" d="M0 0L5 5"/>', 'a transform out of all bounds'],
  ['<path id="bad" transform="scale(NaN)" d="M0 0L5 5"/>', 'transform="scale(NaN)"'],
  ['<path id="bad" transform="translate(1e300)" d="M0 0L5 5"/>', 'a point at'],
  ['<path id="bad" stroke="red" stroke-width="1e308" d="M0 0L5 5"/>', 'a line'],
])('%s is refused by name', (body, what) => {
  const problem = refusal(page(body));
  expect(problem.place).toBe('bad (line 1)');
  expect(problem.expected).toBe('finite coordinates within 1000 m');
  expect(problem.found.slice(0, what.length)).toBe(what);
});
