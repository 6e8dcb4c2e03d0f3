import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type DrawingResult, readDrawing } from '../../src/artwork/index.ts';
import { page } from './support.ts';

/** Never throws; an answer has finite numbers only, closed paths end where they start, and problems are told in full. */
function holds(text: string): void {
  const result = readDrawing(text);
  if (result.ok) checkDrawing(result);
  const told = result.ok ? result.drawing.cautions : result.problems;
  for (const { expected, found, advice } of told) for (const part of [expected, found, advice]) expect(part).not.toBe('');
}

function checkDrawing({ drawing }: Extract<DrawingResult, { ok: true }>): void {
  const numbers: unknown[] = [];
  JSON.stringify(drawing, (_key, value: unknown) => {
    if (typeof value === 'number') numbers.push(value);
    return value;
  });
  expect(numbers.every(Number.isFinite)).toBe(true);
  const paths = [...drawing.strokes.map(({ path }) => path), ...drawing.outlines.flatMap(({ paths: each }) => each)];
  for (const { start, segments, closed } of paths) {
    if (closed) expect(segments.at(-1)?.end).toEqual(start);
  }
  expect(drawing.outlines.every((outline) => outline.paths.every(({ closed }) => closed))).toBe(true);
}

const run = (count: number) => ({ numRuns: count, seed: 1 });

const number = fc.oneof(fc.integer({ min: -99, max: 99 }).map(String), fc.double().map(String), fc.constantFrom('1e308', '-1e308', '1e-308', '.5', '5.', '', '1e400', 'NaN'));
const letter = fc.constantFrom(...'MmLlHhVvCcSsQqTtAaZz');
const data = fc.array(fc.tuple(letter, fc.array(number, { maxLength: 8 })), { maxLength: 8 })
  .map((parts) => `M0 0${parts.map(([name, values]) => name + values.join(' ')).join('')}`);
const transform = fc.array(fc.tuple(fc.constantFrom('translate', 'scale', 'rotate', 'skewX', 'skewY', 'matrix', 'none'), fc.array(number, { maxLength: 6 })), { maxLength: 3 })
  .map((parts) => parts.map(([name, values]) => `${name}(${values.join(',')})`).join(' '));

it('any text is either a drawing or a problem', () => {
  fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), holds), run(300));
});

it('any path data with any transform', () => {
  fc.assert(fc.property(data, transform, (d, t) => { holds(page(`<path d="${d}" transform="${t}" stroke="red"/>`)); }), run(800));
});

it('any values of the attributes of shapes', () => {
  const names = ['x', 'y', 'width', 'height', 'rx', 'ry', 'cx', 'cy', 'r', 'x1', 'y2', 'points', 'viewBox', 'stroke-width', 'href', 'style', 'transform'];
  const value = fc.oneof(number, fc.tuple(number, number, number, number).map((list) => list.join(' ')), fc.constantFrom('#a', '10%', '1em', 'fill:none', 'auto'));
  const attributes = fc.dictionary(fc.constantFrom(...names), value);
  const element = fc.constantFrom('rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon', 'svg', 'use', 'symbol', 'g');
  const written = (set: Record<string, string>) => Object.entries(set).map(([name, text]) => `${name}="${text}"`).join(' ');
  fc.assert(fc.property(fc.array(fc.tuple(element, attributes), { maxLength: 5 }), (elements) => {
    holds(page(elements.map(([name, set]) => `<${name} id="a" ${written(set)}><path d="M0 0h1z"/></${name}>`).join('')));
  }), run(400));
});

const WHOLE = page(`<style>.a > path:first-child, #b {fill:none; stroke:red !important} @media print {g{x:y}}</style>
<defs><symbol id="s" viewBox="0 0 9 9"><circle r="3"/></symbol></defs>
<g class="a" transform="rotate(9) scale(2)"><path id="b" d="M1 2L3 4C5 6 7 8 9 9Q1 2 3 4T5 5A3 4 5 0 1 6 6z"/></g>
<use xlink:href="#s" x="5" width="20"/><svg x="1" viewBox="0 0 5 5"><polygon points="1,2 3,4 5,6"/></svg><text>&amp;</text>`);

it('a drawing with characters put in, taken out and exchanged', () => {
  const edit = fc.tuple(fc.nat(WHOLE.length), fc.nat(6), fc.oneof(fc.string({ maxLength: 4 }), fc.constantFrom('<', '>', '"', '/>', '{', '}', '(', '9e999', '-', '#s', '&', ']]>', '<!--')));
  fc.assert(fc.property(fc.array(edit, { minLength: 1, maxLength: 4 }), (edits) => {
    holds(edits.reduce((text, [at, length, piece]) => text.slice(0, at) + piece + text.slice(at + length), WHOLE));
  }), run(800));
});

it('any style sheet', () => {
  const css = fc.array(fc.constantFrom('path', '.a', '#b', '*', '>', '+', '~', ' ', ',', '{', '}', ':', ';', 'fill', 'red', '!important', '@media', '(', ')', '[', ']', '"', 'd', '\\', '/*', '*/', '::before', '=', '&'), { maxLength: 40 });
  fc.assert(fc.property(css, css, (sheet, style) => {
    const text = style.join('').replace(/"/g, '').replace(/&/g, '');
    holds(page(`<style><![CDATA[${sheet.join('')}]]></style><path class="a" id="b" d="M0 0h1v1z" style="${text}"/>`));
  }), run(800));
});
