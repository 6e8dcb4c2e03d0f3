import type { Wire } from '../../runtime/index.ts';
import { keepPiece, keptPieces } from '../files/pieces.ts';
import type { Sizes } from '../model/boxes.ts';
import type { PieceStore } from '../model/pieces.ts';

/** What the commands on steps learn from the page around them; each room provides what it knows. */
export interface Surroundings {
  /** Extents of the cards as they are drawn. */
  readonly sizes: () => Sizes;
  /** Where new cards go, in canvas units: what the person looks at. Undefined leaves it to what is there. */
  readonly place: () => readonly [number, number] | undefined;
  /** The wire that is chosen on the bench. */
  readonly wire: () => Wire | undefined;
  /** Lets the person type another title for a card. */
  readonly rename: ((card: string) => void) | undefined;
  /** Where groups are kept for other graphs. */
  readonly pieces: PieceStore;
}

/** What holds where no room has told anything. */
const UNTOLD: Surroundings = {
  sizes: () => new Map(), place: () => undefined, wire: () => undefined, rename: undefined, pieces: { keep: keepPiece, kept: keptPieces },
};
let around = UNTOLD;

export const surroundings = (): Surroundings => around;

/** Tells the commands on steps what a room knows; gives back what takes it away again when the room goes. */
export function provide(part: Partial<Surroundings>): () => void {
  around = { ...around, ...part };
  return () => {
    const own = Object.keys(part) as (keyof Surroundings)[];
    const left = own.filter((key) => around[key] === part[key]).map((key) => [key, UNTOLD[key]]);
    around = { ...around, ...Object.fromEntries(left) as Partial<Surroundings> };
  };
}
