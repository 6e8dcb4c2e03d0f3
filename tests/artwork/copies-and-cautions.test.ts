import { describe, expect, it } from 'vitest';
import { corners, found, readPage, refusal, page } from './support.ts';

const LINE = '<path id="a" d="M1 2h3" fill="none" stroke="red"/>';
const starts = (body: string) => readPage(body).strokes.map(({ path }) => corners(path)[0]);

describe('use', () => {
  it('copies an element, moved by x and y inside its own transform', () => {
    expect(starts(`<defs>${LINE}</defs><use href="#a" x="10" y="20"/><use xlink:href="#a" transform="scale(2)" x="10"/>`)).toEqual([[11, 22], [22, 4]]);
  });
  it('may follow other copies', () => {
    expect(starts(`<defs>${LINE}<g id="b"><use href="#a" x="10"/><use href="#a" x="20"/></g></defs><use href="#b" y="5"/>`)).toEqual([[11, 7], [21, 7]]);
  });
  it('lets the copy inherit from where it is put', () => {
    const { strokes } = readPage('<defs><path id="a" d="M1 2h3"/></defs><use href="#a" fill="none" stroke="red" stroke-width="4"/>');
    expect(strokes[0]!.width).toBeCloseTo(4);
  });
  it('fits a symbol into the size asked for', () => {
    const symbol = '<symbol id="s" viewBox="0 0 10 10"><path d="M5 5h1" stroke="red" fill="none"/></symbol>';
    expect(starts(`${symbol}<use href="#s" x="20" y="30" width="40" height="20"/>`)).toEqual([[40, 40]]);
    expect(starts(`${symbol}<use href="#s"/>`)).toEqual([[50, 50]]);
    expect(starts(`${symbol.replace('viewBox', 'preserveAspectRatio="xMinYMin" viewBox')}<use href="#s" width="40" height="20"/>`)).toEqual([[10, 10]]);
  });
  it('fits a nested drawing into the size asked for, or into its own', () => {
    const nested = '<svg id="s" x="10" y="20" width="50" height="50" viewBox="0 0 10 10"><path d="M1 1h1" stroke="red" fill="none"/></svg>';
    expect(starts(`${nested}<use href="#s" width="100" height="100"/>`)).toEqual([[15, 25], [20, 30]]);
    expect(starts('<svg x="10" width="50"><line x1="50%" y1="50%" x2="1" y2="1" stroke="red"/></svg>')).toEqual([[35, 50]]);
  });
  it.each(['#nothing', 'other.svg#a', '', 'a', 'https://example.org/x.svg#a'])('of "%s" is named', (href) => {
    const drawing = readPage(`<use href="${href}"/>${LINE}`);
    expect(drawing.strokes).toHaveLength(1);
    expect(found(drawing)[0]).toMatch(/^1 reference to nothing/);
  });
  it.each([
    '<g id="a"><use href="#a"/><path d="M0 0h1"/></g>',
    '<g id="a"><use href="#b"/></g><g id="b"><path d="M0 0h1"/><use href="#a"/></g>',
    '<use id="a" href="#a"/><path d="M0 0h1"/>',
    '<symbol id="a"><use href="#a"/><path d="M0 0h1"/></symbol><use href="#a"/>',
  ])('that contains itself is named, and the rest is read: %s', (body) => {
    const drawing = readPage(body);
    expect(drawing.strokes.length).toBeGreaterThan(0);
    expect(found(drawing).join()).toMatch(/circular reference/);
  });
  it('multiplied beyond the limit is refused at once', () => {
    const levels = Array.from({ length: 12 }, (_, i) => `<g id="g${i + 1}">${`<use href="#g${i}"/>`.repeat(10)}</g>`).join('');
    const problem = refusal(page(`<defs><path id="g0" d="M0 0h1"/>${levels}</defs><use href="#g12"/>`));
    expect(problem.expected).toBe('at most 10000 copies made by use elements');
  });
  it('of something large, many times over, is refused by the points it makes', () => {
    const body = `<defs><path id="a" d="M0 0${'h1'.repeat(500)}"/></defs>${'<use href="#a"/>'.repeat(30)}`;
    expect(refusal(page(body), { limits: { points: 10_000 } }).expected).toBe('at most 10000 points');
  });
});

describe('switch', () => {
  it.each([
    ['<switch><g requiredExtensions="x"><path d="M1 1h1"/></g><path d="M2 2h1"/><path d="M3 3h1"/></switch>', [[2, 2]]],
    ['<switch><path systemLanguage="de" d="M1 1h1"/><path d="M2 2h1"/></switch>', [[2, 2]]],
    ['<switch><path systemLanguage="de" d="M1 1h1"/><path systemLanguage="fr" d="M2 2h1"/></switch>', [[1, 1]]],
    ['<switch/>', []],
  ])('%s', (body, expected) => {
    expect(starts(body)).toEqual(expected);
  });
});

describe('nothing is dropped in silence', () => {
  it.each([
    ['<text>a</text><text x="3"><tspan>b</tspan></text>', '2 text elements', 0],
    ['<image href="data:image/png;base64,AAAA"/>', '1 picture', 0],
    ['<foreignObject><p xmlns="http://www.w3.org/1999/xhtml">x</p></foreignObject>', '1 element of another kind of document', 0],
    ['<script>alert(1)</script>', '1 script', 0],
    ['<path d="M0 0h1"><animate attributeName="d"/></path>', '1 animation', 1],
    ['<path clip-path="url(#c)" d="M0 0h1"/>', '1 clipping path', 1],
    ['<g style="mask:url(#m)"><path d="M0 0h1"/></g>', '1 mask', 1],
    ['<path filter="url(#f)" d="M0 0h1"/>', '1 filter effect', 1],
    ['<path stroke="url(#g)" fill="none" d="M0 0h1"/>', '1 gradient or pattern as paint', 1],
    ['<path marker-end="url(#m)" stroke="red" d="M0 0h1"/>', '1 line with markers', 1],
    ['<path style="marker:url(#m)" stroke="red" d="M0 0h1"/>', '1 line with markers', 1],
    ['<path stroke-dasharray="3 1" stroke="red" d="M0 0h1"/>', '1 dashed line', 1],
    ['<blob/><blob/>', '2 unknown elements: blob', 0],
  ])('%s', (body, expected, strokes) => {
    const drawing = readPage(body);
    expect(found(drawing)).toEqual([expected]);
    expect(drawing.strokes).toHaveLength(strokes);
    expect(drawing.cautions[0]!.advice).toMatch(/\.$/);
  });

  it('and cautions name the first place, count the rest, and stay few', () => {
    const body = Array.from({ length: 50 }, (_, i) => `\n<circle id="c${i}" cx="bad${i}" r="1"/>`).join('');
    const { cautions } = readPage(`${body}<text id="word">x</text>`);
    expect(cautions.length).toBeLessThan(12);
    expect(cautions[0]).toMatchObject({ place: 'c0 (line 2)', found: '1 value not understood: cx="bad0"' });
    expect(cautions.at(-2)!.found).toBe('42 values not understood');
    expect(cautions.at(-1)!.place).toBe('word (line 51)');
  });

  it('an inert dash array is no dash', () => {
    expect(readPage('<path stroke-dasharray="0" stroke="red" d="M0 0h1"/><path stroke-dasharray="none" stroke="red" d="M0 0h1"/>').cautions).toEqual([]);
  });
});
