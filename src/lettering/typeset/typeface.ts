import { bytesOfBase64 } from '../../artwork/index.ts';
import { openFont } from './open-font.ts';
import type { TypeProblems } from './problem.ts';
import type { Font } from './shaping/font.ts';
import { SHIPPED, type TypefaceName } from './shipped/shipped-typefaces.ts';

/** What text is set with: one font, or several that share out a typeface's characters, the first one leading. */
export interface Typeface {
  readonly name: string;
  readonly fonts: readonly [Font, ...Font[]];
}

/** Opened once: a font takes some hundredths of a second to unpack. */
const opened = new Map<TypefaceName, Typeface>();

/** One of the typefaces that come along. */
export function shippedTypeface(name: TypefaceName): Typeface {
  const known = opened.get(name);
  if (known) return known;
  const fonts = SHIPPED[name].files.map((address) => shippedFont(address)) as [Font, ...Font[]];
  const typeface = { name, fonts };
  opened.set(name, typeface);
  return typeface;
}

function shippedFont(address: string): Font {
  const opening = openFont(bytesOfBase64(address.slice(address.indexOf(',') + 1)));
  if (!opening.ok) throw new Error(`a typeface that comes along could not be opened: ${opening.problems[0].found}`);
  return opening.font;
}

/** A typeface of one font file. `place` is told with what is wrong with it. */
export function typefaceOfFile(name: string, bytes: Uint8Array, place: string): { readonly ok: true; readonly typeface: Typeface } | { readonly ok: false; readonly problems: TypeProblems } {
  const opening = openFont(bytes);
  if (opening.ok) return { ok: true, typeface: { name, fonts: [opening.font] } };
  const [{ expected, found, advice }] = opening.problems;
  return { ok: false, problems: [{ place, expected, found: `“${name}”: ${found}`, advice }] };
}

/** Characters that show nothing by themselves: no font needs to have them. */
const IGNORED = /\p{Default_Ignorable_Code_Point}/u;

/** Whether a font has every character of a text. */
function hasAll(font: Font, text: string): boolean {
  return [...text].every((character) => IGNORED.test(character) || font.has(character.codePointAt(0)!));
}

/**
 * Which font of a typeface sets a letter with its marks; undefined when none does. One that has it whole comes before one that
 * must put it together, the font of the letter before it ahead of others.
 */
export function fontFor(letter: string, { fonts }: Typeface, before = 0): number | undefined {
  const order = [before, ...fonts.keys()];
  const forms = [letter.normalize('NFC'), letter.normalize('NFD')];
  return forms.map((form) => order.find((place) => hasAll(fonts[place]!, form))).find((place) => place !== undefined);
}
