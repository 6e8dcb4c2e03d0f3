import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Outline } from '../../../src/artwork/artwork.ts';
import { applyToPath, multiply, scaling, translation } from '../../../src/geometry/index.ts';
import { openFont } from '../../../src/lettering/typeset/open-font.ts';
import type { Font } from '../../../src/lettering/typeset/shaping/font.ts';

/** Height of the em square of everything set here, mm: letters of a large sign. */
export const EM = 200;

/** A glyph where the text puts it. */
export interface SetGlyph {
  /** Number of the glyph in the font, and the place in the text that it stands for. */
  readonly glyph: number;
  readonly cluster: number;
  readonly outline: Outline;
}

export interface Face {
  readonly name: string;
  /** Glyphs of a line of text from the origin to the right, mm, y up; those without outlines (spaces) left out. */
  readonly set: (text: string) => SetGlyph[];
}

/** The bytes of a face's file in its package of web fonts. */
export const faceBytes = (name: string, subset = 'latin', packing = 'woff', weight = 400): Uint8Array =>
  readFileSync(createRequire(import.meta.url).resolve(`@fontsource/${name}/files/${name}-${subset}-${weight}-normal.${packing}`));

/** A font that must open. */
export function fontOf(bytes: Uint8Array): Font {
  const opening = openFont(bytes);
  if (!opening.ok) throw new Error(opening.problems[0].found);
  return opening.font;
}

/** Opens a face from its package of web fonts. Shaping applies what the font asks for by default: ligatures, contextual alternates, kerning. */
export function openFace(name: string, weight = 400): Face {
  const font = fontOf(faceBytes(name, 'latin', 'woff', weight));
  return { name, set: (text) => setLine(font, text, EM / font.unitsPerEm) };
}

function setLine(font: Font, text: string, scale: number): SetGlyph[] {
  let pen = 0;
  return font.shape(text, { rightToLeft: false, script: 'Latn', ligatures: true }).flatMap(({ glyph, cluster, advance, offset }) => {
    const place = multiply(scaling(scale), translation(pen + offset.x, offset.y));
    pen += advance;
    const paths = font.outline(glyph).map((path) => applyToPath(place, path));
    return paths.length === 0 ? [] : [{ glyph, cluster, outline: { paths, fillRule: 'nonzero', source: text[cluster] ?? '' } as Outline }];
  });
}
