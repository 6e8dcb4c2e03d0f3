import { describe, expect, it } from 'vitest';
import typeset from '../../nodes/typeset.ts';
import type { Outline } from '../../src/artwork/artwork.ts';
import { flattenPath, loopsBounds, pathBounds, regionArea, regionFromLoops, unionBoxes } from '../../src/geometry/index.ts';
import { faceBytes, openFace } from '../lettering/faces/face.ts';
import { outcomeOf, outputsOf, problemsOf } from '../support/run-node.ts';

const NOTHING = { baseline: undefined };
const ownFont = (name: string, bytes: Uint8Array) => ({ name, base64: Buffer.from(bytes).toString('base64') });
const boxOf = (outlines: readonly Outline[]) => unionBoxes(outlines.flatMap(({ paths }) => paths.map(pathBounds)))!;
const setOutlines = (params: Parameters<typeof outputsOf<typeof typeset.inputs, typeof typeset.outputs, typeof typeset.params>>[2]) => outputsOf(typeset, NOTHING, params).outlines;
const cautionsOf = (params: Parameters<typeof setOutlines>[0]) => {
  const outcome = outcomeOf(typeset, NOTHING, params);
  return outcome.ok ? outcome.cautions : undefined;
};

describe('a phrase', () => {
  it('has its capitals as high as asked for', () => {
    const { minY, maxY } = boxOf(setOutlines({ phrase: 'H', typeface: 'Barlow Condensed', size: 120 }));
    expect(minY).toBeCloseTo(0, 9);
    expect(maxY).toBeCloseTo(120, 9);
  });

  it('is one outline for each glyph, which names its characters', () => {
    expect(setOutlines({ phrase: 'a fé\nfi', typeface: 'Barlow Condensed' }).map(({ source }) => source)).toEqual([
      '“a”, letter 1 of line 1', '“f”, letter 3 of line 1', '“é”, letter 4 of line 1', '“fi”, letter 1 of line 2',
    ]);
  });

  it('joins script letters: the word is one shape, which room between letters takes apart with a caution', () => {
    const pieces = (letterSpacing: number) => {
      const { loops } = regionFromLoops(setOutlines({ phrase: 'lamp', typeface: 'Sacramento', letterSpacing }).flatMap(({ paths }) => paths.map((path) => flattenPath(path, 0.05))), 'nonzero');
      return loops.filter((loop) => regionArea({ loops: [loop] }) > 0).length;
    };
    expect(pieces(0)).toBe(1);
    expect(pieces(0.2)).toBe(4);
    expect(cautionsOf({ phrase: 'lamp', typeface: 'Sacramento' })).toEqual([]);
    expect(cautionsOf({ phrase: 'lamp', typeface: 'Sacramento', letterSpacing: 0.2 })).toMatchObject([{ place: 'letterSpacing', found: '3 of 3 joins come apart' }]);
    expect(cautionsOf({ phrase: 'lamp', typeface: 'Barlow Condensed', letterSpacing: 0.2 })).toEqual([]);
  });

  it('says when an arc takes joins apart, and lets a wide one be', () => {
    const on = (radius: number) => cautionsOf({ phrase: 'lamp', typeface: 'Sacramento', size: 80, standsOn: 'arc', radius });
    expect(on(2000)).toEqual([]);
    expect(on(45)).toMatchObject([{ place: 'radius' }]);
  });

  it('measures what it sets, and counts letters and lines', () => {
    const { outlines, quantities } = outputsOf(typeset, NOTHING, { phrase: 'by the\ndozen', typeface: 'Caveat' });
    const { minX, maxX, minY, maxY } = boxOf(outlines);
    expect(quantities).toEqual({
      letteringWidth: { value: maxX - minX, unit: 'mm' }, letteringHeight: { value: maxY - minY, unit: 'mm' }, letters: { value: 10, unit: 'count' }, lines: { value: 2, unit: 'count' },
    });
  });

  it('runs from right to left where its letters do', () => {
    const texts = setOutlines({ phrase: 'שוק', typeface: 'Varela Round' }).map(({ source }) => source?.slice(1, 2));
    expect(texts).toEqual(['ק', 'ו', 'ש']);
  });

  it('puts marks over and under their letters', () => {
    const [mark, letter] = setOutlines({ phrase: 'שָ', typeface: 'Varela Round' }).map(({ paths }) => loopsBounds(paths.map((path) => flattenPath(path, 0.05)))!);
    expect(mark!.maxY).toBeLessThan(letter!.minY);
    expect((mark!.minX + mark!.maxX) / 2).toBeGreaterThan(letter!.minX);
    expect((mark!.minX + mark!.maxX) / 2).toBeLessThan(letter!.maxX);
  });

  it('stands on the first stroke that comes in', () => {
    const strokes = [{ path: { start: { x: 0, y: 0 }, segments: [{ kind: 'line', end: { x: 0, y: 500 } }], closed: false } }] as const;
    const { minX, maxX, minY } = boxOf(outputsOf(typeset, { baseline: strokes }, { phrase: 'HI', typeface: 'Barlow Condensed', size: 50, standsOn: 'drawn stroke', alignment: 'left', offset: 100 }).outlines);
    expect(maxX).toBeCloseTo(0, 9);
    expect(minX).toBeCloseTo(-50, 9);
    expect(minY).toBeGreaterThan(100);
    expect(problemsOf(typeset, NOTHING, { standsOn: 'drawn stroke' })).toMatchObject([{ place: 'baseline', found: 'none' }]);
  });

  it('is set at any length that is taken', () => expect(setOutlines({ phrase: 'ab '.repeat(166), typeface: 'Varela Round' })).toHaveLength(332));
});

describe('what cannot be set', () => {
  it.each([
    ['', 'an empty phrase'], ['  \n\t', 'nothing but spaces'],
    ['Öl 🎉', '“🎉” (U+1F389), which it has not'], ['日本 日', '“日” (U+65E5), “本” (U+672C), which it has not'],
  ])('%j is told in one problem', (phrase, found) => expect(problemsOf(typeset, NOTHING, { phrase })).toMatchObject([{ place: 'phrase', found }]));

  it('leaves out control characters with a caution', () => {
    expect(cautionsOf({ phrase: 'a\u0007b' })).toMatchObject([{ place: 'phrase', found: 'U+0007, which cannot' }]);
  });
});

describe('a font of one\'s own', () => {
  it('is taken instead of the typeface, whatever its file is packed like', () => {
    const word = openFace('grand-hotel').set('Soap').map(({ outline }) => outline.paths[0]!.segments.length);
    for (const packing of ['woff', 'woff2'])
      expect(setOutlines({ phrase: 'Soap', font: ownFont('own.woff', faceBytes('grand-hotel', 'latin', packing)) }).map(({ paths }) => paths[0]!.segments.length)).toEqual(word);
  });

  it('is named where it is broken, or has not what is asked for', () => {
    const bytes = faceBytes('grand-hotel');
    expect(problemsOf(typeset, NOTHING, { font: ownFont('own.ttf', bytes.subarray(0, 5000)) })).toMatchObject([{ place: 'font', found: expect.stringMatching(/^“own.ttf”: one cut short/) as string }]);
    expect(problemsOf(typeset, NOTHING, { font: { name: 'own.ttf', text: 'hello' } })).toMatchObject([{ place: 'font', found: '“own.ttf”, which is text' }]);
    expect(problemsOf(typeset, NOTHING, { phrase: 'שוק', font: ownFont('own.ttf', bytes) })).toMatchObject([{ place: 'phrase', expected: 'characters that own.ttf has' }]);
  });
});
