import type { BenchCard } from './bench-graph.ts';
import type { CardState } from './card-state.ts';

interface Spoken {
  readonly place: string;
  readonly says: string;
  readonly state: CardState;
  readonly opened: boolean;
  readonly chosen: boolean;
}

/** A card's name for those who hear the page: "Groove, step 5 of 25, 3 strokes, caution, chosen". */
export function spokenCard({ title, kind, members }: BenchCard, { place, says, state, opened, chosen }: Spoken): string {
  const what = kind === 'group' ? `group of ${members.length} steps` : `step ${place}`;
  return [title, what, says.replace(/\.$/, ''), state.word, opened ? 'opened' : '', chosen ? 'chosen' : ''].filter(Boolean).join(', ');
}
