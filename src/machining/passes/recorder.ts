import { type Point, type Point3 } from '../../geometry/point.ts';
import { type Cutter } from '../job/cutter.ts';
import { type Move, type Pass, type PassKind } from '../job/pass.ts';
import { type Track, movesAlong } from './track.ts';

/** Air left between the cutter's tip and the floor below it where the feed down ends and a cut begins, mm. */
export const AIR_GAP = 0.2;

/** What every pass of one feature has in common. */
export interface PassHead {
  readonly kind: PassKind;
  readonly name: string;
  readonly cutter: Cutter;
  /** Height above the sheet where passes begin, mm. */
  readonly retract: number;
  readonly plungeFeed: number;
  /** The set-up they belong to. */
  readonly setUp?: number;
}

/** Gathers moves into passes: every coming down begins a new pass. Local to the function that plans. */
export interface Recorder {
  readonly retract: number;
  /** Ends the pass, if any, and comes down through free space to just above `floor`. */
  comeDown(place: Point, floor: number): void;
  /** A straight move; nothing when already there. */
  lineTo(to: Point3, feed: number): void;
  rapidTo(z: number): void;
  along(track: Track, zTo: number, feed: number): void;
  /** Where the cutter is, or undefined before the first coming down. */
  where(): Point3 | undefined;
  passes(): Pass[];
}

const SAME = 1e-9;

export function makeRecorder(head: PassHead): Recorder {
  const { kind, name, cutter, retract, plungeFeed, setUp } = head;
  const done: Pass[] = [];
  let start: Point3 | undefined;
  let at: Point3 | undefined;
  let moves: Move[] = [];
  const add = (...added: readonly Move[]) => {
    moves.push(...added);
    at = added.at(-1)?.to ?? at;
  };
  const end = () => {
    if (start && moves.length > 0) done.push({ kind, name, cutter, start, moves, ...(setUp !== undefined && { setUp }) });
    moves = [];
  };
  const recorder: Recorder = {
    retract,
    comeDown(place, floor) {
      end();
      start = at = { x: place.x, y: place.y, z: retract };
      if (floor + AIR_GAP < retract) recorder.lineTo({ ...start, z: floor + AIR_GAP }, plungeFeed);
    },
    lineTo(to, feed) {
      if (at && Math.hypot(to.x - at.x, to.y - at.y, to.z - at.z) > SAME) add({ kind: 'line', to, feed });
    },
    rapidTo(z) {
      if (at && Math.abs(z - at.z) > SAME) add({ kind: 'rapid', to: { ...at, z } });
    },
    along(track, zTo, feed) {
      if (at) add(...movesAlong(track, at.z, zTo, feed));
    },
    where: () => at,
    passes: () => {
      end();
      start = undefined;
      return done;
    },
  };
  return recorder;
}
