import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import type { PictureItem, PictureLayer, Reading } from '../../values/picture.ts';
import type { Pull } from './hand/pull.ts';
import type { Target } from './hand/targets.ts';
import type { Snap } from './snap.ts';
import type { Tape } from './tape.ts';
import type { Frame, Point, Size, View } from './view.ts';

/** What pointer and keys do on the sheet. */
export type Tool = 'look' | 'tape' | 'read' | 'add';

/** Something a person can take hold of: which handle of the node shown, and which of its places (undefined: all of it). */
export interface Grip {
  readonly handle: number;
  readonly place?: number;
}

/** How the sheet is looked at. None of it belongs to the document. */
export interface SheetState {
  readonly size: Size;
  readonly view: View;
  /** What the view was fitted to, until the person moves it. */
  readonly fitted: 'sheet' | 'all' | undefined;
  /** The sheet that what is shown lies on, where it is not part of the picture itself. */
  readonly ground: readonly PictureLayer[];
  /** What came out is written beside the picture too. */
  readonly inWords: boolean;
  /** The set-up chosen to be looked at alone, by its place in the tiling; see set-ups.ts for whether there is one. */
  readonly setUp: number | undefined;
  /** What else there is in the set-ups, from other nodes, while one is looked at alone. */
  readonly around: readonly PictureLayer[];
  /** Pictures of pixels among what is shown, once they have been decoded. */
  readonly images: ReadonlyMap<PictureItem, CanvasImageSource>;
  /** Names of layers that are hidden. */
  readonly hidden: ReadonlySet<string>;
  /** Order and direction of strokes and passes are drawn. */
  readonly order: boolean;
  readonly tool: Tool;
  /** The handle that new places are for, where the node shown has several that take some. */
  readonly adding: number | undefined;
  readonly tape: Tape;
  /** Where pointer or keys are, mm; absent when the pointer is elsewhere and no tool is at work. */
  readonly cursor: Point | undefined;
  /** The keys, not the pointer, moved the cursor last. */
  readonly byKeys: boolean;
  readonly snap: Snap | undefined;
  readonly readings: readonly Reading[];
  /** What lies under the pointer, in words. */
  readonly under: string | undefined;
  /** What keys act on. */
  readonly grip: Grip | undefined;
  /** What lies under the pointer and can be taken hold of. */
  readonly hovered: Grip | undefined;
  /** The act that is chosen to be done by hand; see hand/ways.ts. */
  readonly way: string | undefined;
  /** What was taken already for the edit under way. */
  readonly picked: readonly Target[];
  /** What keys stand on, and what lies under the pointer, of all that can be taken next. */
  readonly target: Target | undefined;
  readonly aimed: Target | undefined;
  readonly pull: Pull | undefined;
  /** What was done last by hand, for those who do not see it. */
  readonly told: string;
}

/** Nothing is taken, held or aimed at for an edit by hand. */
export const EMPTY_HANDED = { picked: [], target: undefined, aimed: undefined, pull: undefined, told: '' } as const satisfies Partial<SheetState>;

export const initialSheet: SheetState = {
  size: { width: 0, height: 0 }, view: { x: 0, y: 0, scale: 1 }, fitted: undefined, ground: [], setUp: undefined, around: [], images: new Map(), inWords: false, hidden: new Set(), order: true,
  tool: 'look', adding: undefined, tape: {}, cursor: undefined, byKeys: false, snap: undefined, readings: [], under: undefined, grip: undefined, hovered: undefined,
  way: undefined, ...EMPTY_HANDED,
};

export const sheet = createStore<SheetState>()(() => initialSheet);

export const useSheet = <T>(pick: (state: SheetState) => T): T => useStore(sheet, pick);

export const frameOf = ({ view, size }: Pick<SheetState, 'view' | 'size'>): Frame => ({ ...view, ...size });

/** Shows or hides all layers of a name. */
export function showLayer(name: string, shown: boolean): void {
  const hidden = new Set(sheet.getState().hidden);
  if (shown) hidden.delete(name);
  else hidden.add(name);
  sheet.setState({ hidden });
}

/** Moves the view by hand: from then on it stays where it is. */
export function look(view: View): void {
  sheet.setState({ view, fitted: undefined });
}

/** Takes up a tool; what the last one left is cleared. */
export function takeTool(tool: Tool): void {
  sheet.setState({ tool, ...(tool !== 'add' && { adding: undefined }), tape: {}, snap: undefined, readings: [], under: undefined, byKeys: false, ...EMPTY_HANDED });
}
