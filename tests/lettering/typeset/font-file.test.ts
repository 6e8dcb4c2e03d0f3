import { describe, expect, it } from 'vitest';
import { unpackFont } from '../../../src/lettering/typeset/font-file/index.ts';
import { restoreMetrics } from '../../../src/lettering/typeset/font-file/hmtx.ts';
import { type FontTable, sfntTables, writeSfnt } from '../../../src/lettering/typeset/font-file/sfnt.ts';
import { openFont } from '../../../src/lettering/typeset/open-font.ts';
import { seeded } from '../../support/random.ts';
import { faceBytes, fontOf } from '../faces/face.ts';

const woff = faceBytes('varela-round', 'hebrew');
const sfnt = unpackFont(woff);

const problemOf = (bytes: Uint8Array) => {
  const opening = openFont(bytes);
  return opening.ok ? 'opened' : opening.problems[0].found;
};

/** The small font with some of its tables changed, left out or added. */
const altered = (change: (tables: FontTable[]) => FontTable[]) => writeSfnt(0x10000, change(sfntTables(sfnt)));
const without = (...tags: string[]) => altered((tables) => tables.filter(({ tag }) => !tags.includes(tag)));

describe('WOFF2 against WOFF of the same typeface', () => {
  it.each([['varela-round', 'hebrew'], ['amiri', 'latin'], ['barlow-condensed', 'latin-ext']])('%s %s has the same glyphs', (face, subset) => {
    const [one, other] = [fontOf(faceBytes(face, subset, 'woff')), fontOf(faceBytes(face, subset, 'woff2'))];
    expect(other.characters()).toEqual(one.characters());
    const text = one.characters().filter((code) => code > 32).map((code) => String.fromCodePoint(code)).join('');
    const shape = (font: typeof one) => font.shape(text, { rightToLeft: false, script: 'Zyyy', ligatures: true });
    expect(shape(other)).toEqual(shape(one));
    for (const { glyph } of shape(one)) expect(other.outline(glyph), `glyph ${glyph}`).toEqual(one.outline(glyph));
  });
});

describe('advances packed without side bearings (W3C, WOFF File Format 2.0, section 5.4)', () => {
  const header = Uint8Array.of(...Array.from({ length: 34 }, () => 0), 0, 2);
  it.each([
    ['both left out', [3, 1, 0, 2, 0], [1, 0, 0, 11, 2, 0, 0, 12, 0, 13]],
    ['the first two left out', [1, 1, 0, 2, 0, 0, 77], [1, 0, 0, 11, 2, 0, 0, 12, 0, 77]],
    ['the last left out', [2, 1, 0, 2, 0, 0, 77, 0, 78], [1, 0, 0, 77, 2, 0, 0, 78, 0, 13]],
  ])('takes the leftmost points where there are %s', (_, packed, whole) => {
    expect([...restoreMetrics(Uint8Array.from(packed), header, [11, 12, 13])]).toEqual(whole);
  });
});

describe('a file that is no font to set with', () => {
  it.each([
    ['an empty file', new Uint8Array(0), /an empty file/],
    ['text', new TextEncoder().encode('Warm bread from six'), /does not begin like one/],
    ['two bytes', Uint8Array.of(0, 1), /does not begin like one/],
    ['a signature alone', sfnt.subarray(0, 4), /cut short.*list of tables ends after 4 bytes/],
    ['the first half', sfnt.subarray(0, sfnt.length >> 1), /cut short.*lies from byte \d+ to \d+ of/],
    ['the first half of a packed one', woff.subarray(0, woff.length >> 1), /cut short/],
    ['no outlines', without('glyf', 'loca'), /without any/],
    ['bitmaps alone', altered((tables) => [...tables.filter(({ tag }) => tag !== 'glyf'), { tag: 'CBDT', data: new Uint8Array(8) }]), /bitmaps only/],
    ['no table of characters', without('cmap'), /./],
    ['a table that is far too short', altered((tables) => tables.map((table) => (table.tag === 'head' ? { ...table, data: table.data.subarray(0, 8) } : table))), /table “head” has 8 of at least 54 bytes/],
    ['no letters', altered((tables) => tables.map((table) => (table.tag === 'cmap' ? { ...table, data: new Uint8Array(4) } : table))), /without any letter or digit/],
    ['units of nothing', altered((tables) => tables.map((table) => (table.tag === 'head' ? { ...table, data: table.data.map((byte, i) => (i === 18 || i === 19 ? 255 : byte)) } : table))), /./],
  ])('%s is told so', (_, bytes, says) => expect(problemOf(bytes)).toMatch(says));

  it('may lie beyond its file by absurd offsets', () => {
    const far = Uint8Array.from(sfnt);
    far.set([0x7f, 0xff, 0xff, 0xff], 12 + 8);
    expect(problemOf(far)).toMatch(/lies from byte 2147483647 to/);
  });

  it('may claim to hold more than memory bears', () => {
    const huge = Uint8Array.from(woff);
    huge.set([0x7f, 0xff, 0xff, 0xff], 44 + 12);
    expect(problemOf(huge)).toMatch(/claims to hold 2048 MiB/);
  });
});

describe.each([['WOFF', woff], ['WOFF2', faceBytes('varela-round', 'hebrew', 'woff2')], ['sfnt', sfnt]])('a damaged %s', (_, bytes) => {
  /** Opens it and uses what opens; whatever is thrown that is not a problem comes out. */
  const used = (font: Uint8Array): string => {
    const opening = openFont(font);
    if (!opening.ok) return opening.problems[0].advice;
    try {
      return opening.font.shape('שלום', { rightToLeft: true, script: 'Hebr', ligatures: true }).map(({ glyph }) => opening.font.outline(glyph).length).join();
    } catch (error) {
      return (error as { readonly advice: string }).advice;
    }
  };

  it('is refused or used, whatever length it is cut to', () => {
    const lengths = Array.from({ length: 40 }, (_, i) => Math.floor((bytes.length * i) / 40));
    for (const length of lengths) expect(openFont(bytes.subarray(0, length)), `${length} bytes`).toMatchObject({ ok: false });
  });

  it('is refused or used, whatever bytes are changed', () => {
    const random = seeded(20261201);
    const below = (limit: number) => Math.floor(random() * limit);
    for (let round = 0; round < 60; round++) {
      const changed = Uint8Array.from(bytes);
      for (let flips = 0; flips < 1 + round % 5; flips++) changed[below(changed.length)]! ^= 1 << below(8);
      expect(used(changed), `round ${round}`).toMatch(/./);
    }
  });
});
