import { describe, expect, it } from 'vitest';
import { faceBytes, fontOf } from '../faces/face.ts';
import recorded from './hb-shape.json' with { type: 'json' };
import { SHAPING_CASES } from './shaping-cases.ts';

/** As `hb-shape --output-format=json` writes a glyph: number, cluster, displacement and advance, font units. */
interface RecordedGlyph {
  readonly g: number;
  readonly cl: number;
  readonly dx: number;
  readonly dy: number;
  readonly ax: number;
}

/** What HarfBuzz's own command line made of the same text; `tests/bench/shaping-reference-figures.ts` renews it. */
describe(`${recorded.version}, ${recorded.command}`, () => {
  it('was recorded for these cases', () => {
    expect(recorded.cases.map(({ glyphs, ...one }) => (glyphs.length > 0 ? one : undefined))).toEqual(SHAPING_CASES);
  });

  it.each(recorded.cases)('agrees on $face $subset: $text', ({ face, subset, text, script, rightToLeft, glyphs }) => {
    const shaped = fontOf(faceBytes(face, subset, 'woff2')).shape(text, { rightToLeft, script, ligatures: true });
    expect(shaped).toEqual((glyphs as RecordedGlyph[]).map(({ g, cl, dx, dy, ax }) => ({ glyph: g, cluster: cl, advance: ax, offset: { x: dx, y: dy } })));
  });
});

describe('spaced letters', () => {
  it('are not joined into common ligatures, which the same font makes otherwise', () => {
    const font = fontOf(faceBytes('great-vibes'));
    const count = (ligatures: boolean) => font.shape('office fill', { rightToLeft: false, script: 'Latn', ligatures }).length;
    expect(count(false)).toBe(11);
    expect(count(true)).toBe(8);
  });
});
