import { describe, expect, it } from 'vitest';
import { found, page, read, refusal, tidy } from './support.ts';

/** Start of the only stroke, in mm. */
function startOf(text: string) {
  const { x, y } = read(text).strokes[0]!.path.start;
  return { x: tidy(x), y: tidy(y) };
}

const LINE = '<path d="M0 0H1" fill="none" stroke="black"/>';

// CSS Values 3, absolute lengths: 1in = 96px = 25.4mm = 72pt = 6pc, 1Q = 0.25mm.
describe('a length in each absolute unit is read in mm', () => {
  it.each([['10mm', 10], ['1cm', 10], ['1in', 25.4], ['72pt', 25.4], ['6pc', 25.4], ['96px', 25.4], ['96', 25.4], ['40Q', 10], ['1e1mm', 10], [' 10MM ', 10]])(
    '%s', (length, mm) => {
      expect(read(page('', `width="${length}" height="5mm"`)).size.width).toBeCloseTo(mm, 9);
    });
});

it('reads per cents of the page and of its diagonal', () => {
  const { strokes } = read(page('<line x1="50%" y1="25%" x2="100%" y2="100%" stroke="black" stroke-width="10%"/>', 'width="300mm" height="400mm" viewBox="0 0 300 400"'));
  expect(strokes[0]!.path.start.x).toBeCloseTo(150);
  expect(strokes[0]!.path.start.y).toBeCloseTo(300);
  // SVG 2, section 8.9: the diagonal 500 over the square root of 2.
  expect(strokes[0]!.width).toBeCloseTo(50 / Math.SQRT2);
});

describe('the view box', () => {
  // Worked from SVG 2, section 8.2: one unit is 1 mm, and half of the slack of 400 mm lies to the left.
  it('of 2000 by 600 sits in the middle of a page of 2400 by 600 mm', () => {
    const drawing = (x: number, y: number) => page(`<path d="M${x} ${y}h1" fill="none" stroke="black"/>`, 'width="2400mm" height="600mm" viewBox="0 0 2000 600"');
    expect(startOf(drawing(0, 0))).toEqual({ x: 200, y: 600 });
    expect(startOf(drawing(2000, 600))).toEqual({ x: 2200, y: 0 });
    expect(read(drawing(0, 0)).size).toEqual({ width: 2400, height: 600 });
  });

  // A view box of 100 by 100 in a page of 200 by 100 mm and in one of 100 by 200 mm, worked by hand from the same section.
  it.each([
    ['xMinYMin meet', [0, 100], [0, 200]], ['xMidYMid meet', [50, 100], [0, 150]], ['xMaxYMax meet', [100, 100], [0, 100]],
    ['xMinYMax', [0, 100], [0, 100]], ['xMinYMin slice', [0, 100], [0, 200]], ['xMidYMid slice', [0, 150], [-50, 200]],
    ['xMaxYMax slice', [0, 200], [-100, 200]], ['none', [0, 100], [0, 200]],
  ] as const)('is aligned by %s', (ratio, wide, tall) => {
    const at = (size: string) => startOf(page(LINE, `${size} viewBox="0 0 100 100" preserveAspectRatio="${ratio}"`));
    expect(at('width="200mm" height="100mm"')).toEqual({ x: wide[0], y: wide[1] });
    expect(at('width="100mm" height="200mm"')).toEqual({ x: tall[0], y: tall[1] });
  });

  it('stretches both ways with none, and says that line widths suffer', () => {
    const drawing = read(page('<path d="M0 0L100 100" fill="none" stroke="black"/>', 'width="200mm" height="50mm" viewBox="0 0 100 100" preserveAspectRatio="none"'));
    expect(drawing.strokes[0]!.path.segments[0]!.end.x).toBeCloseTo(200);
    expect(drawing.strokes[0]!.path.segments[0]!.end.y).toBeCloseTo(0);
    expect(drawing.strokes[0]!.width).toBeCloseTo(1);
    expect(found(drawing)).toEqual(['1 line whose width varies with its direction']);
  });

  it('may begin anywhere', () => {
    expect(startOf(page(LINE, 'width="10mm" height="10mm" viewBox="-5 -5 10 10"'))).toEqual({ x: 5, y: 5 });
  });
});

describe('a page without a size in mm earns a caution', () => {
  it('and is read by its view box at 96 units per inch', () => {
    const drawing = read(page(LINE, 'viewBox="0 0 96 192"'));
    expect(drawing.size).toEqual({ width: 25.4, height: 50.8 });
    expect(drawing.cautions[0]!.advice).toMatch(/known dimension/);
  });
  it('when measured in px', () => {
    expect(found(read(page(LINE, 'width="96" height="96px"')))).toEqual(['1 page measured in px']);
  });
  it('when measured in per cents', () => {
    const drawing = read(page(LINE, 'width="100%" height="100%" viewBox="0 0 96 96"'));
    expect(drawing.size.width).toBeCloseTo(25.4);
    expect(found(drawing)).toEqual(['1 page without them']);
  });
  it('when one side is missing, which follows from the other', () => {
    expect(read(page(LINE, 'width="50mm" viewBox="0 0 100 200"')).size).toEqual({ width: 50, height: 100 });
    expect(read(page(LINE, 'height="50mm" viewBox="0 0 100 200"')).size).toEqual({ width: 25, height: 50 });
  });
  it('and a page in mm earns none', () => {
    expect(read(page(LINE, 'width="50mm" height="50mm" viewBox="0 0 50 50"')).cautions).toEqual([]);
  });
});

it.each(['width="0" height="10mm"', 'width="-5mm" height="10mm"', 'width="5mm" height="10mm" viewBox="0 0 0 10"', 'width="1e400mm" height="1mm"', 'width="1001m" height="1e300mm"'])(
  'refuses the page %s', (attributes) => {
    const problem = refusal(page('', attributes));
    expect(problem.expected).toBe('a page with a width and height above zero and at most 1000 m');
    expect(problem.place).toBe('svg 1 (line 1)');
  });

it('puts the origin at the lower left corner, y up', () => {
  expect(startOf(page('<path d="M10 30h5" fill="none" stroke="black"/>', 'width="100mm" height="100mm" viewBox="0 0 100 100"'))).toEqual({ x: 10, y: 70 });
});

it('reads lengths by the font with a caution', () => {
  const drawing = read(page('<circle cx="2em" cy="0" r="1"/>', 'width="96mm" height="96mm" viewBox="0 0 96 96"'));
  expect(drawing.outlines[0]!.paths[0]!.start.x).toBeCloseTo(33);
  expect(found(drawing)).toEqual(['1 length measured by the font: cx="2em"']);
});
