import { createStore } from 'zustand/vanilla';
import type { Relief } from '../worker/protocol.ts';

/** What playing a program back adds to the picture of the sheet. */
export interface Overlay {
  /** The shaded sheet, drawn under everything else. */
  readonly relief: Relief | undefined;
  /** The cutter where it is, mm; below the top face when z < 0. */
  readonly cutter: { readonly x: number; readonly y: number; readonly z: number; readonly diameter: number } | undefined;
  /** The way already gone in the program shown, as x, y pairs in mm, with the places where rapids begin and end. */
  readonly trail: { readonly cut: Float32Array; readonly rapid: Float32Array } | undefined;
}

export const overlay = createStore<Overlay>()(() => ({ relief: undefined, cutter: undefined, trail: undefined }));
