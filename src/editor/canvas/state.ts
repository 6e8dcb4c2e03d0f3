import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import type { Wire } from '../../runtime/index.ts';
import type { End } from '../model/graph.ts';
import type { Box } from '../model/boxes.ts';

/** A wire being drawn: from a port, by hand or by a wire's loosened end. Places are bench units. */
export interface Pull {
  readonly from: End;
  readonly at: readonly [number, number];
  /** The wire whose end was taken off. */
  readonly loose?: Wire;
  /** Ports that take it, as side and `id.port`. */
  readonly fitting: ReadonlySet<string>;
  /** Where the pointer is in the window, in pixels. */
  readonly pointer: readonly [number, number];
  /** The port below the pointer, and why it does not take the wire. */
  readonly over?: End;
  readonly refusal?: string;
}

/** A search for a step to add: where it goes and what it is to be wired to. */
export interface Adding {
  readonly at: readonly [number, number];
  /** The port the new step is wired to. */
  readonly port?: End;
  /** The wire the new step is put into. */
  readonly into?: Wire;
}

/** A menu of what can be done with a card, a wire or the bench, opened at a place of the window in pixels. */
export interface OpenMenu {
  readonly on: 'card' | 'wire' | 'bench';
  readonly id: string;
  readonly at: readonly [number, number];
}

/** What the bench shows that is no part of the document. */
export interface BenchState {
  /** rete's element of each card and wire that stands on the bench, by id. */
  readonly cards: ReadonlyMap<string, HTMLElement>;
  readonly wires: ReadonlyMap<string, HTMLElement>;
  /** Layers that move with the cards, below and above them. */
  readonly under: HTMLElement | undefined;
  readonly over: HTMLElement | undefined;
  /** The card that has, or last had, the focus: the one tab stop of the bench. */
  readonly focused: string | undefined;
  /** A card that takes the focus as soon as it stands on the bench. */
  readonly wantsFocus: string | undefined;
  /** The card whose title is being typed. */
  readonly renaming: string | undefined;
  readonly chosenWire: string | undefined;
  readonly pull: Pull | undefined;
  readonly adding: Adding | undefined;
  readonly menu: OpenMenu | undefined;
  /** The card, and the port of it, that is being wired from lists. */
  readonly wiring: { readonly card: string; readonly end?: End } | undefined;
  /** The frame drawn to choose cards, in bench units. */
  readonly choosing: Box | undefined;
  /** The wire a dragged card would be put into. */
  readonly target: string | undefined;
  readonly overview: boolean;
  readonly notes: boolean;
  /** Whether cards are too small to be read in full. */
  readonly far: boolean;
  /** What was done last, for those who hear the page. */
  readonly says: string;
}

export const bench = createStore<BenchState>()(() => ({
  cards: new Map(), wires: new Map(), under: undefined, over: undefined, focused: undefined, wantsFocus: undefined, renaming: undefined, chosenWire: undefined, pull: undefined, adding: undefined, menu: undefined,
  wiring: undefined, choosing: undefined, target: undefined, overview: true, notes: false, far: false, says: '',
}));

export const useBench = <T>(pick: (state: BenchState) => T): T => useStore(bench, pick);

/** Which part of the bench is seen: `x`, `y` is where its origin lies in the window's bench, in pixels; `k` pixels per unit. */
export interface Viewport {
  readonly x: number;
  readonly y: number;
  readonly k: number;
  readonly width: number;
  readonly height: number;
}

export const viewport = createStore<Viewport>()(() => ({ x: 0, y: 0, k: 1, width: 0, height: 0 }));

/** The part of the bench that is seen, in bench units. */
export const seenBox = ({ x, y, k, width, height }: Viewport): Box => ({ x: -x / k, y: -y / k, width: width / k, height: height / k });

export const announce = (says: string): void => bench.setState({ says });
