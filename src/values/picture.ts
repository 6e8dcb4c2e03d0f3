import type { JunctionMap } from '../lettering/repair/junction-map.ts';
import type { PortType } from '../runtime/node.ts';

/** What a layer shows. It decides how the layer is drawn, nothing else. */
export type LayerKind =
  /** What each set-up cuts; pins in the spoilboard and the holes that come to lie on them; hold-downs with the discs to keep out of; bars that carry the sheet. */
  | 'tiles' | 'pins' | 'dowels' | 'hold-downs' | 'supports'
  | 'sheet' | 'outlines' | 'strokes' | 'region' | 'groove' | 'holes' | 'tabs' | 'passes' | 'rapids' | 'seams' | 'travel'
  /** Strip by its runs; where there is none in the groove; wires, feeds and supplies behind the board. */
  | 'lit' | 'unlit' | 'wires'
  /** A picture of pixels, to scale. */
  | 'image'
  /** Places where strokes meet; places where a stroke could have gone another way. */
  | 'junctions' | 'doubts';

/** One thing drawn. Lengths mm, y up. */
export interface PictureItem {
  /** SVG path data: absolute commands M L C A Z. Its arcs turn as SVG says for axes x right and y up. */
  readonly d: string;
  /** How a filled item with crossing edges is filled; even-odd unless stated. */
  readonly fillRule?: 'nonzero';
  /** What it is, in words: "stroke 3, 412 mm". */
  readonly title?: string;
  /** Where a stroke or pass begins, and the unit vector it sets off in; absent for what has no direction. */
  readonly start?: { readonly at: readonly [number, number]; readonly along: readonly [number, number] };
  /** A word or number that is drawn with it: "set-up 2". */
  readonly label?: string;
  /** The set-ups (places in the tiling) that cut it or in which it is there; it belongs to none in particular when absent. */
  readonly setUps?: readonly number[];
  /** The run it belongs to, from 0: runs are told apart by number and dashes. */
  readonly run?: number;
  /** A PNG as base64 that fills the box; `d` is its edge. */
  readonly image?: { readonly png: string; readonly box: PictureBox };
  /** It lies on the machine, in program coordinates, and stays there while set-ups move the sheet. */
  readonly fixed?: true;
}

export interface PictureLayer {
  readonly kind: LayerKind;
  /** What a person calls it: "strokes", "board". Layers of one name are shown and hidden together. */
  readonly name: string;
  readonly items: readonly PictureItem[];
}

export interface PictureBox {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** A value as a person sees it: drawn to scale where it has a shape, in a few short lines where it has none. */
export interface Picture {
  /** In the order they are drawn. */
  readonly layers: readonly PictureLayer[];
  readonly lines: readonly string[];
  /** Around everything drawn; absent when nothing is. */
  readonly box?: PictureBox;
}

/** One figure measured at a place: "width here", "radius here". */
export interface Reading {
  readonly says: string;
  readonly value: number;
  readonly unit: string;
  /** The place on the thing measured. */
  readonly at: readonly [number, number];
}

/** A port with the type and value it carries. */
export interface Carried {
  readonly port: string;
  readonly type: PortType;
  readonly value: unknown;
}

/** A place in mm, and the set-ups in which it is there: in all of them when absent. */
export type NamedSpot = readonly [x: number, y: number, setUps?: readonly number[]];

/** Places by the port they belong to. */
export type NamedSpots = Readonly<Record<string, readonly NamedSpot[]>>;

/** A set-up as it is looked at alone. `shift` + program coordinate = drawing coordinate. */
export interface PictureSetUp {
  readonly name: string;
  readonly shift: readonly [number, number];
  /** What belongs to it alone, and what it cuts: drawing coordinates, mm. */
  readonly core: PictureBox;
  readonly window: PictureBox;
}

/** The set-ups a sheet is cut in, and the machine they have in common. */
export interface PictureSetUps {
  readonly list: readonly PictureSetUp[];
  /** What every cutter's edge reaches in all set-ups together, in program coordinates. */
  readonly reach: PictureBox;
  /** The bed, in program coordinates; absent where no machine is known. */
  readonly bed?: PictureBox;
}

/** Where strokes meet and end, by the port they belong to. */
export type NamedJunctions = Readonly<Record<string, JunctionMap>>;
export type { JunctionMap };
