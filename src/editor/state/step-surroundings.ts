import type { Wire } from '../../runtime/index.ts';
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
  readonly pieces: PieceStore | undefined;
}

const NOTHING: Surroundings = { sizes: () => new Map(), place: () => undefined, wire: () => undefined, rename: undefined, pieces: undefined };
let around = NOTHING;

export const surroundings = (): Surroundings => around;

/** Tells the commands on steps what a room knows; gives back what takes it away again when the room goes. */
export function provide(part: Partial<Surroundings>): () => void {
  around = { ...around, ...part };
  return () => {
    const own = Object.keys(part) as (keyof Surroundings)[];
    const left = own.filter((key) => around[key] === part[key]).map((key) => [key, NOTHING[key]]);
    around = { ...around, ...Object.fromEntries(left) as Partial<Surroundings> };
  };
}
