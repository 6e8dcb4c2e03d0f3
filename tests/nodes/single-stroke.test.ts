import { describe, expect, it } from 'vitest';
import singleStroke from '../../nodes/single-stroke.ts';
import { pathBounds, pathEnd, pathLength, pathSegmentsWithStarts, unionBoxes } from '../../src/geometry/index.ts';
import { gridGlyph, SINGLE_STROKE_NAMES } from '../../src/lettering/typeset/single-stroke/face.ts';
import hershey from '../../src/lettering/typeset/single-stroke/hershey.json' with { type: 'json' };
import { outcomeOf, outputsOf, problemsOf } from '../support/run-node.ts';

const NOTHING = { baseline: undefined };
type Given = Parameters<typeof outputsOf<typeof singleStroke.inputs, typeof singleStroke.outputs, typeof singleStroke.params>>[2];
const written = (params: Given) => outputsOf(singleStroke, NOTHING, params).strokes;

/** A glyph in the format that Hershey's data is passed on in: number, pairs, edges, then x and y as letters around R, “ R” where the pen is lifted. */
function decoded(row: string): { readonly edges: readonly number[]; readonly strokes: readonly (readonly number[])[] } {
  const value = (letter: string) => letter.charCodeAt(0) - 82;
  const pairs = Array.from({ length: Number(row.slice(5, 8)) }, (_, i) => row.slice(8 + 2 * i, 10 + 2 * i));
  const strokes = pairs.slice(1).join(',').split(', R,').filter((stroke) => stroke !== '').map((stroke) => stroke.split(',').flatMap((pair) => [...pair].map(value)));
  return { edges: [...pairs[0]!].map(value), strokes };
}

// N. M. Wolcott and J. Hilsenrath, NBS Special Publication 424 (1976), as the widely copied distribution has it: rows of the roman simplex set.
describe('the data', () => {
  it.each([['A', '  501  9I[RFJ[ RRFZ[ RMTWT'], [' ', '  699  1JZ']])('has “%s” as its row says', (character, row) => {
    const { edges, strokes } = decoded(row);
    expect(hershey.faces['Roman simplex'].glyphs[character.charCodeAt(0) - 32]).toEqual([...edges, ...strokes]);
  });

  it('gives A an advance of 18, capitals of 21 and 54.944 of line, and a space an advance of 16', () => {
    const { advance, strokes } = gridGlyph('Roman simplex', 'A')!;
    expect(advance).toBe(18);
    expect(Math.max(...strokes.flat().map(({ y }) => y))).toBe(21);
    expect(Math.min(...strokes.flat().map(({ y }) => y))).toBe(0);
    expect(strokes.reduce((sum, points) => sum + points.slice(1).reduce((length, { x, y }, i) => length + Math.hypot(x - points[i]!.x, y - points[i]!.y), 0), 0)).toBeCloseTo(54.944, 3);
    expect(gridGlyph('Roman simplex', ' ')).toEqual({ advance: 16, strokes: [] });
  });

  it('carries its acknowledgements, and has a stroke for every character but the space', () => {
    expect(hershey.acknowledgements.join(' ')).toMatch(/originally created by Dr\. A\. V\. Hershey.*originally created by James Hurt/);
    const counts = SINGLE_STROKE_NAMES.map((name) => {
      const { characters, glyphs } = hershey.faces[name];
      expect([...characters.slice(1)].every((character) => gridGlyph(name, character)!.strokes.length > 0), name).toBe(true);
      return [characters.length, glyphs.length];
    });
    expect(counts).toEqual([[95, 95], [95, 95], [91, 91]]);
    expect(gridGlyph('Greek simplex', 'Α')).toEqual(gridGlyph('Roman simplex', 'A'));
    expect(gridGlyph('Greek simplex', 'Ω')!.strokes).not.toEqual(gridGlyph('Roman simplex', 'O')!.strokes);
  });
});

describe('what is written', () => {
  it('has capitals as high as asked for, and needs no tracing', () => {
    const strokes = written({ phrase: 'H', face: 'Roman simplex', size: 105, rounded: false });
    expect(unionBoxes(strokes.map(({ path }) => pathBounds(path)))).toMatchObject({ minY: 0, maxY: 105 });
    expect(strokes).toHaveLength(3);
  });

  it('rounds curves through the points of the grid and leaves corners and stems straight', () => {
    const kinds = (phrase: string) => written({ phrase, face: 'Roman simplex' }).map(({ path }) => path.segments.map(({ kind }) => kind));
    expect(kinds('O')).toEqual([Array.from({ length: 20 }, () => 'cubic')]);
    expect(kinds('LV').flat(2)).not.toContain('cubic');
    const [round] = written({ phrase: 'O', face: 'Roman simplex', size: 21 });
    const [plain] = written({ phrase: 'O', face: 'Roman simplex', size: 21, rounded: false });
    expect(round!.path.closed).toBe(true);
    expect(round!.path.segments.map(({ end }) => end)).toEqual(plain!.path.segments.map(({ end }) => end));
    expect(pathLength(round!.path)).toBeGreaterThan(pathLength(plain!.path));
    expect(pathLength(round!.path)).toBeLessThan(1.03 * pathLength(plain!.path));
  });

  it('leaves curves without a kink', () => {
    for (const { path } of written({ phrase: 'Oc', face: 'Roman simplex', size: 21 })) {
      const cubics = pathSegmentsWithStarts(path).flatMap(({ start, segment }) => (segment.kind === 'cubic' ? [{ ...segment, start }] : []));
      for (const [i, { end, control2 }] of cubics.slice(0, -1).entries()) {
        const next = cubics[i + 1]!.control1;
        const sine = ((end.x - control2.x) * (next.y - end.y) - (end.y - control2.y) * (next.x - end.x)) / (Math.hypot(end.x - control2.x, end.y - control2.y) * Math.hypot(next.x - end.x, next.y - end.y));
        expect(sine).toBeCloseTo(0, 9);
      }
    }
  });

  it('goes on from letter to letter in script, unless they are spaced, which is told', () => {
    const joined = written({ phrase: 'mum', face: 'Script simplex' });
    const apart = outcomeOf(singleStroke, NOTHING, { phrase: 'mum', face: 'Script simplex', letterSpacing: 0.3 });
    if (!apart.ok) throw new Error('refused');
    expect(apart.outputs.strokes.length).toBeGreaterThan(joined.length);
    expect(apart.cautions).toMatchObject([{ place: 'letterSpacing', found: '2 of 2 joins come apart' }]);
    expect(joined.map(({ source }) => source)).toContain('“m”, letter 1 of line 1, “u”, letter 2 of line 1');
  });

  it('stands on a stroke that comes in', () => {
    const baseline = [{ path: { start: { x: 0, y: 0 }, segments: [{ kind: 'line', end: { x: 0, y: 300 } }], closed: false } }] as const;
    const { strokes } = outputsOf(singleStroke, { baseline }, { phrase: 'l', face: 'Roman simplex', size: 21, standsOn: 'drawn stroke', alignment: 'left' });
    expect(strokes.map(({ path }) => [path.start, pathEnd(path)].map(({ x, y }) => [Math.round(x * 1e6) / 1e6 + 0, Math.round(y * 1e6) / 1e6]))).toEqual([[[-21, 4], [0, 4]]]);
  });

  it.each([['', 'an empty phrase'], ['Łódź é', '“Ł” (U+0141), “ó” (U+00F3), “ź” (U+017A), “é” (U+00E9), which it has not'], ['🎉', '“🎉” (U+1F389), which it has not']])('says of %j what it cannot', (phrase, found) => {
    expect(problemsOf(singleStroke, NOTHING, { phrase })).toMatchObject([{ place: 'phrase', found }]);
  });
});
