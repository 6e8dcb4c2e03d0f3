import { describe, expect, it } from 'vitest';
import { applyToPoint, type Path } from '../../../src/geometry/index.ts';
import { makeBaseline } from '../../../src/lettering/typeset/baseline.ts';
import type { Cluster, SetLine } from '../../../src/lettering/typeset/cluster.ts';
import { layOut, lineWidth } from '../../../src/lettering/typeset/layout.ts';
import { readPhrase } from '../../../src/lettering/typeset/phrase.ts';
import { missingLetters, runsOf } from '../../../src/lettering/typeset/runs.ts';
import { shippedTypeface } from '../../../src/lettering/typeset/typeface.ts';

const cluster = (text: string, advance: number): Cluster => ({ text, letter: 1, advance, drawn: [] });
const LINE: SetLine = { clusters: [cluster('L', 40), cluster('i', 12), cluster(' ', 20), cluster('m', 60)] };
const SPACING = { letters: 3, words: 7 };
const WIDTH = 40 + 12 + 20 + 60 + 3 * 3 + 7;
const SETTING = { alignment: 'centre', leading: 150, capHeight: 70 } as const;

/** Where the middles of the advances come to stand, and which way is up there. */
const placesOf = (lines: readonly SetLine[], shape: Parameters<typeof makeBaseline>[0], setting = SETTING as Parameters<typeof makeBaseline>[1]) =>
  layOut(lines, SPACING, makeBaseline(shape, setting)).map(({ cluster: { advance }, transform }) => {
    const [at, up] = [applyToPoint(transform, { x: advance / 2, y: 0 }), applyToPoint(transform, { x: advance / 2, y: 1 })];
    return { at, up: { x: up.x - at.x, y: up.y - at.y } };
  });

describe('a straight baseline', () => {
  it('adds up advances, room between letters but not after the last, and room at spaces', () => expect(lineWidth(LINE, SPACING)).toBe(WIDTH));

  it.each([['left', 0], ['centre', -WIDTH / 2], ['right', -WIDTH]] as const)('aligned %s begins at %d', (alignment, begin) => {
    expect(placesOf([LINE], { kind: 'straight' }, { ...SETTING, alignment }).map(({ at }) => at.x - begin)).toEqual([20, 49, 68, 118].map((x) => expect.closeTo(x, 9) as number));
  });

  it('stands further lines below by the leading', () => expect(placesOf([LINE, LINE], { kind: 'straight' }).map(({ at }) => at.y)).toEqual([0, 0, 0, 0, -150, -150, -150, -150]));
});

describe.each([[500], [-500]])('an arc of radius %d', (radius) => {
  const centre = { x: 0, y: -radius };
  const places = placesOf([LINE, LINE], { kind: 'arc', radius });

  it('has every letter on its line\'s circle, upright to it', () => {
    places.forEach(({ at, up }, i) => {
      const own = radius - (i < 4 ? 0 : 150);
      expect(Math.hypot(at.x - centre.x, at.y - centre.y)).toBeCloseTo(Math.abs(own), 9);
      expect(up.x * own).toBeCloseTo(at.x - centre.x, 9);
      expect(up.y * own).toBeCloseTo(at.y - centre.y, 9);
    });
  });

  it('has the same lengths along the arc as along a straight line', () => {
    const straight = placesOf([LINE], { kind: 'straight' });
    const along = places.slice(0, 4).map(({ at }) => Math.atan2(at.x, Math.abs(at.y - centre.y)) * Math.abs(radius));
    expect(along).toEqual(straight.map(({ at }) => expect.closeTo(at.x, 9) as number));
  });
});

describe('an arc that is too small', () => {
  it.each([[WIDTH / (2 * Math.PI) - 0.1, true], [WIDTH / (2 * Math.PI) + 0.1, false], [0, true], [-60, true], [-71, false]])('radius %d', (radius, refused) => {
    expect(makeBaseline({ kind: 'arc', radius }, SETTING).refuse([WIDTH]) !== undefined).toBe(refused);
  });

  it('counts the last line, which lies nearest to a centre below', () => {
    const refuse = (radius: number) => makeBaseline({ kind: 'arc', radius }, SETTING).refuse([100, 400])?.[0].expected;
    expect(refuse(150 + 400 / (2 * Math.PI) - 0.1)).toMatch(/at least 213.7 mm/);
    expect(refuse(150 + 400 / (2 * Math.PI) + 0.1)).toBeUndefined();
  });
});

describe('a drawn baseline', () => {
  const corner: Path = { start: { x: 0, y: 0 }, segments: [{ kind: 'line', end: { x: 100, y: 0 } }, { kind: 'line', end: { x: 100, y: 100 } }], closed: false };
  const square: Path = { start: { x: 0, y: 0 }, segments: [{ x: 50, y: 0 }, { x: 50, y: 50 }, { x: 0, y: 50 }, { x: 0, y: 0 }].map((end) => ({ kind: 'line', end })), closed: true };
  const left = { ...SETTING, alignment: 'left' } as const;

  it('carries letters round its corner, upright to each side, from its offset on', () => {
    const places = placesOf([LINE], { kind: 'path', path: corner, offset: 10 }, left);
    expect(places.map(({ at }) => [at.x, at.y])).toEqual([[30, 0], [59, 0], [78, 0], [100, 28]].map((at) => at.map((value) => expect.closeTo(value, 9) as number)));
    expect(places.map(({ up }) => [up.x, up.y])).toEqual([[0, 1], [0, 1], [0, 1], [-1, 0]].map((up) => up.map((value) => expect.closeTo(value, 9) as number)));
  });

  it('goes straight on beyond its ends, and says how far', () => {
    const baseline = makeBaseline({ kind: 'path', path: corner, offset: 100 }, left);
    expect(baseline.footing(250, 0)).toMatchObject({ at: { x: 100, y: 150 } });
    expect(baseline.footing(-30, 0)).toMatchObject({ at: { x: -30, y: 0 } });
    expect(baseline.beyond(130)).toBeCloseTo(30, 9);
    expect(baseline.beyond(100)).toBe(0);
  });

  it('goes round and round on a closed one, as long as the text is no longer', () => {
    const baseline = makeBaseline({ kind: 'path', path: square, offset: 0 }, left);
    expect(baseline.footing(225, 0).at).toMatchObject({ x: expect.closeTo(25, 9) as number, y: expect.closeTo(0, 9) as number });
    expect(baseline.refuse([200])).toBeUndefined();
    expect(baseline.refuse([201])?.[0].found).toBe('200.0 mm');
  });
});

describe('a phrase', () => {
  it.each([
    ['one\ntwo', ['one', 'two']], ['one\r\ntwo  ', ['one', 'two']], ['\n one\n\ntwo\n\n', [' one', '', 'two']], ['a\tb', ['a b']], ['e\u0301', ['é']], ['', []], [' \n ', []],
  ])('%j has the lines %j', (text, lines) => expect(readPhrase(text)).toEqual({ lines, cautions: [] }));

  it('loses control characters and halves of characters, and says which', () => {
    const { lines, cautions } = readPhrase('a\u0007b\ud83dc\u0007');
    expect(lines).toEqual(['abc']);
    expect(cautions[0]?.found).toBe('U+0007, U+D83D, which cannot');
  });
});

describe('runs', () => {
  const typeface = shippedTypeface('Varela Round');
  const shown = (text: string, direction: 'automatic' | 'left to right' | 'right to left' = 'automatic') => runsOf(text, typeface, direction).map((run) => run.text);

  // UAX 9, section 3.4, with the examples' capitals, which stand for right-to-left letters, written in Hebrew.
  it.each([
    ['car שלום.', ['car ', 'שלום', '.']],
    ['שלום car.', ['.', 'car', 'שלום ']],
    ['שלום 12 car', ['car', ' 12', 'שלום ']],
  ])('%s stands in the order %j', (text, order) => expect(shown(text).join('|').replaceAll('|', '')).toBe(order.join('')));

  it('takes the direction that is asked for', () => {
    expect(shown('car.', 'right to left')).toEqual(['.', 'car']);
    expect(shown('car.', 'left to right')).toEqual(['car.']);
  });

  it('takes a letter whole from where there is one, rather than put together', () => {
    const caveat = shippedTypeface('Caveat');
    expect(runsOf('dź', caveat, 'automatic').map(({ text, font }) => [text, font])).toEqual([['d', 0], ['ź', 1]]);
  });

  it('finds letters that no font of the typeface has, each once, with its marks', () => expect(missingLetters('a日日b🎉', typeface)).toEqual(['日', '🎉']));
});
