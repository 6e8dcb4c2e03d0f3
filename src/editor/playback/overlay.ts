import { createStore } from 'zustand/vanilla';
import type { Relief } from '../worker/protocol.ts';

/** What playing a program back adds to the picture of the sheet. */
export interface Overlay {
  /** The shaded sheet, drawn under everything else. */
  readonly relief: Relief | undefined;
  /** The cutter where it is, mm; below the top face when z < 0. */
  readonly cutter: { readonly x: number; readonly y: number; readonly z: number; readonly diameter: number } | undefined;
  /** The way just gone in the pass under way, as lines of four numbers in mm: x, y where it begins and x, y where it ends. */
  readonly trail: { readonly cut: Float32Array; readonly rapid: Float32Array } | undefined;
}

export const NO_OVERLAY: Overlay = { relief: undefined, cutter: undefined, trail: undefined };

export const overlay = createStore<Overlay>()(() => NO_OVERLAY);
