import sacramento from '@fontsource/sacramento/files/sacramento-latin-400-normal.woff2?inline';
import sacramentoExtended from '@fontsource/sacramento/files/sacramento-latin-ext-400-normal.woff2?inline';
import pacifico from '@fontsource/pacifico/files/pacifico-latin-400-normal.woff2?inline';
import pacificoExtended from '@fontsource/pacifico/files/pacifico-latin-ext-400-normal.woff2?inline';
import dancingScript from '@fontsource/dancing-script/files/dancing-script-latin-400-normal.woff2?inline';
import dancingScriptExtended from '@fontsource/dancing-script/files/dancing-script-latin-ext-400-normal.woff2?inline';
import greatVibes from '@fontsource/great-vibes/files/great-vibes-latin-400-normal.woff2?inline';
import greatVibesExtended from '@fontsource/great-vibes/files/great-vibes-latin-ext-400-normal.woff2?inline';
import caveat from '@fontsource/caveat/files/caveat-latin-400-normal.woff2?inline';
import caveatExtended from '@fontsource/caveat/files/caveat-latin-ext-400-normal.woff2?inline';
import patrickHand from '@fontsource/patrick-hand/files/patrick-hand-latin-400-normal.woff2?inline';
import patrickHandExtended from '@fontsource/patrick-hand/files/patrick-hand-latin-ext-400-normal.woff2?inline';
import varelaRound from '@fontsource/varela-round/files/varela-round-latin-400-normal.woff2?inline';
import varelaRoundExtended from '@fontsource/varela-round/files/varela-round-latin-ext-400-normal.woff2?inline';
import varelaRoundHebrew from '@fontsource/varela-round/files/varela-round-hebrew-400-normal.woff2?inline';
import barlowCondensed from '@fontsource/barlow-condensed/files/barlow-condensed-latin-400-normal.woff2?inline';
import barlowCondensedExtended from '@fontsource/barlow-condensed/files/barlow-condensed-latin-ext-400-normal.woff2?inline';

/** What a typeface is like, which is how it is chosen for a sign. */
export type TypefaceKind = 'script' | 'handwriting' | 'sans serif' | 'condensed';

interface Shipped {
  readonly kind: TypefaceKind;
  /** Its characters in several files, each as a data address. */
  readonly files: readonly [string, ...string[]];
}

/** The typefaces that come along, all under the SIL Open Font License (see NOTICE), the kinds together. */
export const SHIPPED = {
  'Sacramento': { kind: 'script', files: [sacramento, sacramentoExtended] },
  'Pacifico': { kind: 'script', files: [pacifico, pacificoExtended] },
  'Dancing Script': { kind: 'script', files: [dancingScript, dancingScriptExtended] },
  'Great Vibes': { kind: 'script', files: [greatVibes, greatVibesExtended] },
  'Caveat': { kind: 'handwriting', files: [caveat, caveatExtended] },
  'Patrick Hand': { kind: 'handwriting', files: [patrickHand, patrickHandExtended] },
  'Varela Round': { kind: 'sans serif', files: [varelaRound, varelaRoundExtended, varelaRoundHebrew] },
  'Barlow Condensed': { kind: 'condensed', files: [barlowCondensed, barlowCondensedExtended] },
} as const satisfies Readonly<Record<string, Shipped>>;

export type TypefaceName = keyof typeof SHIPPED;

export const TYPEFACE_NAMES = Object.keys(SHIPPED) as [TypefaceName, ...TypefaceName[]];

/** The names of one kind, as a sentence lists them. */
export const namesOfKind = (kind: TypefaceKind): string => TYPEFACE_NAMES.filter((name) => SHIPPED[name].kind === kind).join(', ');
