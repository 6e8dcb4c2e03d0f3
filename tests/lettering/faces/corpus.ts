/** A typeface under the SIL Open Font License, from its package of web fonts. */
export interface CorpusFace {
  readonly name: string;
  readonly weight: number;
  /** Which table of pen strokes its letters are held against. */
  readonly hand: 'print' | 'script';
  /** Left out while the tracing is tuned, and reported apart. */
  readonly heldOut?: boolean;
}

export const CORPUS: readonly CorpusFace[] = [
  { name: 'sacramento', weight: 400, hand: 'script' },
  { name: 'pacifico', weight: 400, hand: 'script' },
  { name: 'dancing-script', weight: 400, hand: 'script' },
  { name: 'great-vibes', weight: 400, hand: 'script' },
  { name: 'caveat', weight: 400, hand: 'script' },
  { name: 'patrick-hand', weight: 400, hand: 'print' },
  { name: 'varela-round', weight: 400, hand: 'print' },
  { name: 'barlow-condensed', weight: 400, hand: 'print' },
  { name: 'grand-hotel', weight: 400, hand: 'script', heldOut: true },
  { name: 'quicksand', weight: 400, hand: 'print', heldOut: true },
];

/** What the stalls of a market hall might hang over their counters. */
export const PHRASES = ['Warm bread from six', 'Oysters by the dozen', 'Jukebox & quince jam'] as const;

export const CHARACTERS = [...'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789'];
