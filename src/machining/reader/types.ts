import { type Point3 } from '../../geometry/point.ts';
import { type MachiningProblem } from '../job/problem.ts';

export type Plane = 'XY' | 'XZ' | 'YZ';
export type Turning = 'off' | 'clockwise' | 'counter-clockwise';
export type FeedMode = 'per-minute' | 'inverse-time';

interface ReadMoveBase {
  /** Line of the program, counted from 1. */
  readonly line: number;
  readonly from: Point3;
  readonly to: Point3;
  readonly spindle: Turning;
  readonly spindleSpeed: number;
}

interface FeedMoveBase extends ReadMoveBase {
  /** mm/min along the move, in either mode. */
  readonly feed: number;
  readonly feedMode: FeedMode;
}

/**
 * One move as the program's words say it. Millimetres, in machine coordinates where every work coordinate system has its
 * origin at 0 until the program sets one; so program coordinates, for a program that sets none.
 */
export type ReadMove =
  | (ReadMoveBase & { readonly kind: 'rapid' })
  | (FeedMoveBase & { readonly kind: 'line' })
  | (FeedMoveBase & {
    readonly kind: 'arc';
    readonly plane: Plane;
    /** On the arc's axis, as far along it as the start. */
    readonly centre: Point3;
    /** Seen from the positive end of the axis normal to the plane. */
    readonly clockwise: boolean;
  });

/** What a program does besides moving, in order; `beforeMove` moves have been made when it happens. */
export type ReadEvent = { readonly line: number; readonly beforeMove: number } & (
  | { readonly kind: 'comment' | 'message'; readonly text: string }
  | { readonly kind: 'spindle'; readonly direction: Turning; readonly speed: number }
  | { readonly kind: 'coolant'; readonly mist: boolean; readonly flood: boolean }
  | { readonly kind: 'dwell'; readonly seconds: number }
  | { readonly kind: 'tool-change'; readonly slot: number }
  | { readonly kind: 'pause'; readonly optional: boolean }
  | { readonly kind: 'end'; readonly word: 'M2' | 'M30' | '%' }
);

/** Why a line is not understood: what the standard wants there, what came, and what to do. */
export interface Refusal {
  readonly expected: string;
  readonly found: string;
  readonly advice: string;
}

export type ProgramProblem = MachiningProblem & { readonly line: number };

export type ReadProgram =
  | { readonly ok: true; readonly moves: readonly ReadMove[]; readonly events: readonly ReadEvent[] }
  | { readonly ok: false; readonly problems: readonly [ProgramProblem] };

export const refuse = (expected: string, found: string, advice: string): Refusal => ({ expected, found, advice });
