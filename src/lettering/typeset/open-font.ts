import type { Point } from '../../geometry/index.ts';
import { BrokenFont, unpackFont } from './font-file/index.ts';
import type { TypeProblems } from './problem.ts';
import { type Font, openSfnt } from './shaping/font.ts';

export type FontOpening = { readonly ok: true; readonly font: Font } | { readonly ok: false; readonly problems: TypeProblems };

/** Anything one can write with: a font of signs alone has none. */
const WRITTEN = /[\p{L}\p{N}]/u;

/** Points farther from the origin than this many em are a damaged font's: a letter has none. */
const FARTHEST = 16;

/** Opens the bytes of a font file; says what is wrong with them, in one problem, if they are none that letters can be set with. */
export function openFont(bytes: Uint8Array): FontOpening {
  const opening = withFont(() => guarded(() => withLetters(openSfnt(unpackFont(bytes)))));
  return opening.ok ? { ok: true, font: opening.value } : opening;
}

function withLetters(font: Font): Font {
  if (font.unitsPerEm < 16 || font.unitsPerEm > 16384) throw new BrokenFont('16 to 16 384 units per em', String(font.unitsPerEm));
  const written = font.characters().filter((code) => code < 0x110000 && WRITTEN.test(String.fromCodePoint(code)));
  if (written.length === 0) throw new BrokenFont('a font with letters', 'one without any letter or digit', 'Choose a font that has the letters of the phrase.');
  return bounded(font);
}

/** The font with outlines that lie within reason; where it draws others, or the engine stops at it, it is broken. */
function bounded(font: Font): Font {
  const limit = FARTHEST * font.unitsPerEm;
  const within = ({ x, y }: Point) => Math.abs(x) <= limit && Math.abs(y) <= limit;
  const outline: Font['outline'] = (glyph) => {
    const paths = guarded(() => font.outline(glyph));
    if (paths.every(({ start, segments }) => within(start) && segments.every(({ end }) => within(end)))) return paths;
    throw new BrokenFont(`outlines within ${FARTHEST} em`, `points farther out in glyph ${glyph}`);
  };
  return {
    ...font, outline, capHeight: font.capHeight, has: (code) => guarded(() => font.has(code)), shape: (text, options) => guarded(() => font.shape(text, options)),
  };
}

/** What the engine stops at is damage of the font: there is no more to be known of it. */
function guarded<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw error instanceof BrokenFont ? error : new BrokenFont('a font file in good order', 'one whose tables are damaged');
  }
}

const problemOf = ({ expected, found, advice }: BrokenFont): TypeProblems[0] => ({ expected, found, advice });

/** Does something with a font that may turn out to be broken on the way. */
export function withFont<T>(work: () => T): { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: TypeProblems } {
  try {
    return { ok: true, value: work() };
  } catch (error) {
    if (error instanceof BrokenFont) return { ok: false, problems: [problemOf(error)] };
    throw error;
  }
}
