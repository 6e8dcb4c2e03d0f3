import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { PlayedProgram } from '../worker/protocol.ts';
import { blockEnds, nextStop, passStarts, previousStop } from './jumps.ts';
import { totalSeconds } from './moments.ts';

/** How many seconds of the machine pass in one of the person. */
export const SPEEDS = [1, 10, 60, 300] as const;
export type Speed = (typeof SPEEDS)[number];

/** A screen that was hidden, or busy, must not make the cutter leap: no frame counts for more than this, seconds. */
const LONGEST_FRAME = 0.25;

export interface PlaybackState {
  /** Whether the bar is open; without it nothing is drawn over the sheet. */
  readonly open: boolean;
  /** The programs of the node that is shown; none until they came from the worker. */
  readonly programs: readonly PlayedProgram[];
  /** Time counted through all programs. */
  readonly seconds: number;
  readonly playing: boolean;
  readonly speed: Speed;
  /** Whether the sheet is shaded as it is cut. */
  readonly relief: boolean;
  /** Why there is nothing to play, or no relief. */
  readonly refused: string | undefined;
}

export const initialPlayback: PlaybackState = { open: false, programs: [], seconds: 0, playing: false, speed: 10, relief: true, refused: undefined };

/** What follows from what a person does: each gives the next state. */
export type Change = (state: PlaybackState) => PlaybackState;

export const opened: Change = (state) => ({ ...state, open: true });

/** Speed and relief are kept for the next time. */
export const closed: Change = ({ speed, relief }) => ({ ...initialPlayback, speed, relief });

/** Other programs than before: they stand still, at the same time if there is such a time in them. */
export const loaded = (programs: readonly PlayedProgram[]): Change => (state) =>
  ({ ...state, programs, playing: false, refused: undefined, seconds: Math.min(state.seconds, totalSeconds(programs)) });

export const refused = (says: string): Change => (state) => ({ ...state, programs: [], playing: false, refused: says });

/** Starts over when the programs have come to their end. */
export const started: Change = (state) => {
  const total = totalSeconds(state.programs);
  if (total === 0) return state;
  return { ...state, playing: true, seconds: state.seconds >= total ? 0 : state.seconds };
};

export const paused: Change = (state) => ({ ...state, playing: false });

/** Lets some time of the person pass, in seconds. */
export const passed = (elapsed: number): Change => (state) => {
  if (!state.playing) return state;
  const total = totalSeconds(state.programs);
  const seconds = Math.min(total, state.seconds + Math.max(0, Math.min(elapsed, LONGEST_FRAME)) * state.speed);
  return { ...state, seconds, playing: seconds < total };
};

export const soughtTo = (seconds: number): Change => (state) =>
  (Number.isFinite(seconds) ? { ...state, seconds: Math.min(totalSeconds(state.programs), Math.max(0, seconds)) } : state);

/** One move, pass or second on (1) or back (-1). Stepping by moves or passes stops the playing. */
export const stepped = (by: 'move' | 'pass' | 'second', way: 1 | -1): Change => (state) => {
  if (by === 'second') return soughtTo(state.seconds + way)(state);
  const stop = way === 1 ? nextStop : previousStop;
  return { ...paused(state), seconds: stop(state.programs, state.seconds, by === 'move' ? blockEnds : passStarts) };
};

export const playback = createStore<PlaybackState>()(() => initialPlayback);
export const usePlayback = <T>(pick: (state: PlaybackState) => T): T => useStore(playback, pick);

/** Makes a change to the state of the one bar there is. */
export const change = (next: Change): void => playback.setState(next);
