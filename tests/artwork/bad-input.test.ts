import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '../../src/artwork/index.ts';
import { found, page, read, refusal } from './support.ts';

const place = (text: string) => refusal(text).place;

describe('what is no drawing is refused with one clear problem', () => {
  it.each([
    ['', 'an empty file', 'line 1, column 1'],
    [' \n ', 'an empty file', 'line 1, column 1'],
    ['hello', 'text data outside of root node', 'line 1, column 5'],
    ['\u0089PNG\r\n\u001a\n\u0000', 'disallowed character', undefined],
    ['{"a": 1}', 'text data outside of root node', undefined],
    ['<!DOCTYPE html>\n<html><head><meta charset="utf-8">', 'the outermost element html', 'line 2, column 6'],
    ['<html xmlns="http://www.w3.org/1999/xhtml"/>', 'the outermost element html', undefined],
    ['<svg xmlns="urn:something-else"/>', 'the outermost element svg', undefined],
    ['<path d="M0 0h1"/>', 'the outermost element path', undefined],
    ['<svg xmlns="http://www.w3.org/2000/svg">\n<g>\n<path d="M0', 'unclosed tag: g', 'line 3, column 11'],
    ['<svg xmlns="http://www.w3.org/2000/svg"><g></svg>', 'unexpected close tag', undefined],
    ['<svg a="1" a="2"/>', 'duplicate attribute: a', undefined],
    ['<svg>&undefined;</svg>', 'undefined entity', undefined],
    ['<svg/><svg/>', 'documents may contain only one root', undefined],
    ['<!-- nothing', 'document must contain a root element', undefined],
  ])('%j', (text, what, where) => {
    const problem = refusal(text);
    expect(problem.found).toBe(what);
    expect(problem.place).toMatch(/^line \d+, column \d+$/);
    if (where !== undefined) expect(problem.place).toBe(where);
    expect(problem.advice).toMatch(/^[A-Z].*\.$/);
  });

  it('every beginning of a drawing is refused, whatever it is cut in', () => {
    const whole = page('<style>a{fill:red}</style><g id="x"><path d="M0 0h1"/><!-- y --><![CDATA[z]]></g>');
    for (let length = 0; length < whole.length; length += 1) expect(place(whole.slice(0, length))).toMatch(/^line 1, column \d+$/);
  });
});

describe('entities', () => {
  const BOMB = '<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;">]>';
  it.each([BOMB, '<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/passwd">]>', '<!DOCTYPE svg [<!ENTITY % a "x"> %a;]>'])('are refused by name: %s', (doctype) => {
    const problem = refusal(`${doctype}${page('<path d="M0 0h1"/>')}`);
    expect(problem).toMatchObject({ expected: 'a document type that defines no entities', found: 'the entity a' });
  });
  it('a document type without them is read past', () => {
    const doctype = '<?xml version="1.0" standalone="no"?><!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">';
    expect(read(`${doctype}\n${page('<path d="M0 0h1"/>')}`).strokes).toHaveLength(1);
  });
  it('the five of XML and numbers of characters are read', () => {
    expect(read(page('<path id="a&amp;b&#x26;c" d="M0 0h1"/>')).strokes[0]!.source).toBe('a&b&c');
  });
});

describe('limits', () => {
  it('refuses 20 000 elements inside one another', () => {
    const problem = refusal(page(`${'<g>'.repeat(20_000)}<path d="M0 0h1"/>${'</g>'.repeat(20_000)}`));
    expect(problem).toMatchObject({ expected: 'at most 256 elements inside one another', found: 'more than 256' });
  });
  it('reads exactly as deep as it says', () => {
    const nested = (depth: number) => page(`${'<g>'.repeat(depth - 2)}<path d="M0 0h1"/>${'</g>'.repeat(depth - 2)}`);
    expect(read(nested(DEFAULT_LIMITS.depth)).strokes).toHaveLength(1);
    expect(refusal(nested(DEFAULT_LIMITS.depth + 1)).found).toBe('more than 256');
  });
  it('counts copies of copies as depth', () => {
    const links = Array.from({ length: 300 }, (_, i) => `<g id="g${i + 1}"><use href="#g${i}"/></g>`).join('');
    expect(refusal(page(`<defs><path id="g0" d="M0 0h1"/>${links}</defs><use href="#g300"/>`)).expected).toMatch(/at most 256 elements inside one another, copies/);
  });
  it('refuses too much text, counted in bytes', () => {
    const text = page('<desc>é€😀</desc>');
    const bytes = new TextEncoder().encode(text).length;
    expect(read(text, { limits: { bytes } }).strokes).toEqual([]);
    expect(refusal(text, { limits: { bytes: bytes - 1 } }).expected).toMatch(/^at most [\d.]+ MiB of text$/);
    expect(refusal(' '.repeat(1 << 20) + page(''), { limits: { bytes: 1 << 20 } }).found).toMatch(/^1(\.\d+)? MiB$/);
    expect(DEFAULT_LIMITS.bytes).toBe(32 * 1024 * 1024);
  });
  it('refuses too many elements and too many points', () => {
    const body = '<path d="M0 0h1h1"/>'.repeat(10);
    expect(refusal(page(body), { limits: { elements: 10 } }).expected).toBe('at most 10 elements');
    expect(read(page(body), { limits: { elements: 11, points: 30 } }).strokes).toHaveLength(10);
    expect(refusal(page(body), { limits: { points: 29 } })).toMatchObject({ place: 'path 10 (line 1)', expected: 'at most 29 points' });
  });
  it('refuses endless comparing of style rules', () => {
    const text = page(`<style>${'*{fill:red}'.repeat(100)}</style>${'<path d="M0 0h1"/>'.repeat(100)}`);
    expect(read(text).strokes).toHaveLength(100);
    expect(refusal(text, { limits: { styleSteps: 5000 } }).expected).toMatch(/^at most 5000 comparisons/);
  });
  it('reads past brackets nested without end in a style', () => {
    expect(found(read(page(`<style>${'{'.repeat(100_000)}</style>`)))).toEqual(['1 style rule left out: a sheet of deeply nested brackets']);
    expect(read(page(`<path d="M0 0h1" style="${'('.repeat(100_000)}"/>`)).strokes).toHaveLength(1);
  });
  // Patterns that try again from every place would take minutes for these, and the runner's limit stops them.
  it.each(['transform', 'd', 'fill', 'opacity', 'stroke-width', 'points', 'preserveAspectRatio', 'viewBox', 'style', 'class', 'stroke-dasharray', 'transform-origin'])(
    'does not stall on %s made to be slow to match', (name) => {
      const long = 30_000;
      const [ones, zeros, spaces, commas] = ['1', '0', ' ', ','].map((character) => character.repeat(long));
      const values = [`${ones}#`, `${zeros}#`, `${spaces}#`, `1${spaces}#`, `rgba(0,0,0,${zeros}`, `translate(${spaces}`, commas, `M0 0 5 5${spaces}#`, `M0 0 5 5${commas}`];
      const body = values.map((value) => `<svg ${name}="${value}"><path stroke="red" ${name}="${value}"/><polygon ${name}="${value}"/></svg>`).join('');
      expect(read(page(body)).outlines).toEqual([]);
    });
});

it('reads drawings whose namespaces are not declared', () => {
  expect(read('<svg width="9mm" height="9mm"><use xlink:href="#a"/><path id="a" d="M0 0h1"/></svg>').strokes).toHaveLength(2);
  expect(read('<svg:svg xmlns:svg="http://www.w3.org/2000/svg" width="9mm" height="9mm"><svg:path d="M0 0h1"/></svg:svg>').strokes).toHaveLength(1);
  expect(read('\ufeff<svg width="9mm" height="9mm"/>').strokes).toHaveLength(0);
});

it('is not fooled by names of the language it is written in', () => {
  const names = ['__proto__', 'constructor', 'toString', 'hasOwnProperty'];
  const body = names.map((name) => `<${name} ${name}="1"/><use href="#${name}"/><path id="${name}" class="${name}" style="${name}:1;fill:none" stroke="red" stroke-width="5${name}" d="M0 0h1"/>`).join('');
  const drawing = read(page(`<style>${names.map((name) => `${name}{fill:red}.${name}{stroke:blue}`).join('')}</style>${body}`));
  expect(drawing.strokes).toHaveLength(8);
  expect(drawing.strokes.every(({ width }) => width !== undefined)).toBe(true);
});
