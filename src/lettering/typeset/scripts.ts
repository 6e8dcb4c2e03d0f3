/** Scripts of the living alphabets by their tag of ISO 15924, and what Unicode calls them. */
const SCRIPTS: readonly (readonly [tag: string, letters: RegExp])[] = ([
  ['Latn', 'Latin'], ['Grek', 'Greek'], ['Cyrl', 'Cyrillic'], ['Hebr', 'Hebrew'], ['Arab', 'Arabic'], ['Armn', 'Armenian'], ['Geor', 'Georgian'],
  ['Syrc', 'Syriac'], ['Thaa', 'Thaana'], ['Nkoo', 'Nko'], ['Ethi', 'Ethiopic'], ['Deva', 'Devanagari'], ['Beng', 'Bengali'], ['Guru', 'Gurmukhi'],
  ['Gujr', 'Gujarati'], ['Orya', 'Oriya'], ['Taml', 'Tamil'], ['Telu', 'Telugu'], ['Knda', 'Kannada'], ['Mlym', 'Malayalam'], ['Sinh', 'Sinhala'],
  ['Thai', 'Thai'], ['Laoo', 'Lao'], ['Tibt', 'Tibetan'], ['Mymr', 'Myanmar'], ['Khmr', 'Khmer'], ['Mong', 'Mongolian'], ['Hang', 'Hangul'],
  ['Hira', 'Hiragana'], ['Kana', 'Katakana'], ['Bopo', 'Bopomofo'], ['Hani', 'Han'], ['Cher', 'Cherokee'], ['Tfng', 'Tifinagh'], ['Adlm', 'Adlam'],
] as const).map(([tag, name]) => [tag, new RegExp(`^\\p{Script=${name}}`, 'u')]);

/** Shaped by the rules that hold for every script. */
const ANY = 'Zyyy';

/** The script of each letter of a line. Figures, spaces and signs go with the letter before, at the beginning with the one after. */
export function scriptsOf(letters: readonly string[]): string[] {
  const own = letters.map((letter) => SCRIPTS.find(([, is]) => is.test(letter))?.[0]);
  let last = own.find((tag) => tag !== undefined) ?? ANY;
  return own.map((tag) => (last = tag ?? last));
}
