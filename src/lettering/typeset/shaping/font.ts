import type { Path } from '../../../geometry/index.ts';
import { startEngine } from './engine.ts';
import { makePen } from './pen.ts';

/** A glyph of shaped text, in font units, in the order in which a line has them from left to right. */
export interface ShapedGlyph {
  /** Number of the glyph in the font; 0 where it has none. */
  readonly glyph: number;
  /** Place in the text (UTF-16) of the first character it stands for. */
  readonly cluster: number;
  readonly advance: number;
  readonly offset: { readonly x: number; readonly y: number };
}

export interface ShapeOptions {
  readonly rightToLeft: boolean;
  /** Of ISO 15924, such as `Latn`. */
  readonly script: string;
  /** Whether letters may be joined into common ligatures: not where they are spaced. */
  readonly ligatures: boolean;
}

/** An opened font. Lengths in font units, y up. */
export interface Font {
  readonly unitsPerEm: number;
  /** Height of capitals by what the font says of itself, or by its H or O. */
  readonly capHeight: number;
  readonly has: (codePoint: number) => boolean;
  /** Every character it has. */
  readonly characters: () => readonly number[];
  readonly shape: (text: string, options: ShapeOptions) => ShapedGlyph[];
  readonly outline: (glyph: number) => readonly Path[];
}

const READ_ONLY = 1;
const LEFT_TO_RIGHT = 4;
const RIGHT_TO_LEFT = 5;
const RECORD = 20;
/** What is switched off where letters are spaced: common and contextual ligatures, as CSS Text does (letter-spacing). */
const LIGATURES = ['liga', 'clig'];

const tagOf = (text: string): number => [...text].reduce((tag, letter) => tag * 256 + letter.charCodeAt(0), 0) | 0;

/**
 * Opens a font, which must be sfnt, for shaping by the OpenType rules: contextual alternates, ligatures, kerning, marks.
 * Whatever a font is like, asking it gives an answer or throws; it does not hang.
 */
export function openSfnt(sfnt: Uint8Array): Font {
  const engine = startEngine();
  const { call } = engine;
  const scratch = call['malloc']!(4096);
  const words = () => new DataView(engine.memory.buffer);
  const place = call['malloc']!(sfnt.length);
  new Uint8Array(engine.memory.buffer).set(sfnt, place);
  const face = call['hb_face_create']!(call['hb_blob_create']!(place, sfnt.length, READ_ONLY, 0, 0), 0);
  const font = call['hb_font_create']!(face);
  const pen = makePen(engine);
  const outlines = new Map<number, readonly Path[]>();

  const addFeatures = (): number => {
    LIGATURES.forEach((tag, i) => [tagOf(tag), 0, 0, -1].forEach((value, k) => words().setInt32(scratch + 16 * (4 + i) + 4 * k, value, true)));
    return scratch + 64;
  };
  const addText = (buffer: number, text: string) => {
    const at = call['malloc']!(2 * text.length);
    const memory = words();
    for (let i = 0; i < text.length; i++) memory.setUint16(at + 2 * i, text.charCodeAt(i), true);
    call['hb_buffer_add_utf16']!(buffer, at, text.length, 0, text.length);
    call['free']!(at);
  };
  const glyphsOf = (buffer: number): ShapedGlyph[] => {
    const [infos, positions] = [call['hb_buffer_get_glyph_infos']!(buffer, scratch), call['hb_buffer_get_glyph_positions']!(buffer, scratch)];
    const memory = words();
    return Array.from({ length: memory.getUint32(scratch, true) }, (_, i) => {
      const [info, position] = [infos + RECORD * i, positions + RECORD * i];
      return {
        glyph: memory.getUint32(info, true), cluster: memory.getUint32(info + 8, true), advance: memory.getInt32(position, true),
        offset: { x: memory.getInt32(position + 8, true), y: memory.getInt32(position + 12, true) },
      };
    });
  };

  return {
    unitsPerEm: call['hb_face_get_upem']!(face),
    get capHeight() {
      call['hb_ot_metrics_get_position_with_fallback']!(font, tagOf('cpht'), scratch);
      return words().getInt32(scratch, true);
    },
    has: (codePoint) => call['hb_font_get_nominal_glyph']!(font, codePoint, scratch) !== 0,
    characters: () => {
      const set = call['hb_set_create']!();
      call['hb_face_collect_unicodes']!(face, set);
      const count = call['hb_set_get_population']!(set);
      const at = call['malloc']!(4 * count);
      call['hb_set_next_many']!(set, -1, at, count);
      const found = [...new Uint32Array(engine.memory.buffer.slice(at, at + 4 * count))];
      call['free']!(at);
      call['hb_set_destroy']!(set);
      return found;
    },
    shape: (text, { rightToLeft, script, ligatures }) => {
      const buffer = call['hb_buffer_create']!();
      addText(buffer, text);
      call['hb_buffer_set_direction']!(buffer, rightToLeft ? RIGHT_TO_LEFT : LEFT_TO_RIGHT);
      call['hb_buffer_set_script']!(buffer, tagOf(script));
      call['hb_shape']!(font, buffer, ligatures ? 0 : addFeatures(), ligatures ? 0 : LIGATURES.length);
      const glyphs = glyphsOf(buffer);
      call['hb_buffer_destroy']!(buffer);
      return glyphs;
    },
    outline: (glyph) => {
      const known = outlines.get(glyph);
      if (known) return known;
      call['hb_font_draw_glyph']!(font, glyph, pen.functions, 0);
      const drawn = pen.taken();
      outlines.set(glyph, drawn);
      return drawn;
    },
  };
}
