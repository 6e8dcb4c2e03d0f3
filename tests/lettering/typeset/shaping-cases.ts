/** Text to be shaped with one file of a typeface, and in what way. */
export interface ShapingCase {
  readonly face: string;
  readonly subset: string;
  readonly script: string;
  readonly rightToLeft: boolean;
  readonly text: string;
}

const latin = (face: string, ...texts: string[]): ShapingCase[] => texts.map((text) => ({ face, subset: 'latin', script: 'Latn', rightToLeft: false, text }));
const extended = (face: string, text: string): ShapingCase => ({ face, subset: 'latin-ext', script: 'Latn', rightToLeft: false, text });
const rightward = (face: string, subset: string, script: string, ...texts: string[]): ShapingCase[] => texts.map((text) => ({ face, subset, script, rightToLeft: true, text }));

/** Ligatures, contextual alternates, kerning, marks put together and placed, letters that change by their neighbours. */
export const SHAPING_CASES: readonly ShapingCase[] = [
  ...latin('sacramento', 'Oysters by the dozen', 'Jukebox & quince jam'),
  ...latin('pacifico', 'Warm bread from six', 'Fifth floor waffles'),
  ...latin('dancing-script', 'Lantern aisle', 'oboe worse bovine os'),
  ...latin('great-vibes', 'AVATAR To Wave', 'The thrifty llama'),
  ...latin('caveat', 'aaa eee ooo sss', 'Crème brûlée'),
  ...latin('patrick-hand', 'AVA Tea Yo-yo', 'fjord office'),
  ...latin('varela-round', 'Typography, Wax & Ink'),
  ...latin('barlow-condensed', 'WAVE LTAVY', 'figures 1970–2026', 'Noe\u0308l a\u0304 x\u0308'),
  extended('great-vibes', 'ŁŽŠŤžčřě'), extended('barlow-condensed', 'Łźęąığ'),
  ...rightward('varela-round', 'hebrew', 'Hebr', 'שָׁלוֹם', 'שוק פתוח (היום)'),
  ...rightward('amiri', 'arabic', 'Arab', 'السوق مفتوح', 'بِسْمِ ٱللّٰهِ', 'لا إله'),
];
