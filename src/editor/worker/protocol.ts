import type { Check, CheckStatus, NamedJunctions, NamedSpots, Picture, PictureLayer, PictureSetUps, Quantities, Reading, ResultFile } from '../../values/index.ts';
import type { PlayedProgram } from '../../values/playback/timeline.ts';
import type { Relief } from '../../values/playback/relief.ts';
import type { GraphDocument, MissingInput, NodeShape, Problem } from '../../runtime/index.ts';

/** A result of a node as the page shows it. The values themselves stay in the worker: they are large. */
export interface NodeReport {
  readonly state: 'ready' | 'failed' | 'blocked';
  /** One line that tells what came out, or what stopped it. */
  readonly says: string;
  /** A small picture of what leaves the node, simplified to `THUMBNAIL_DOTS` across. */
  readonly thumbnail: Picture;
  readonly problems: readonly Problem[];
  readonly cautions: readonly Problem[];
  readonly missing: readonly MissingInput[];
  /** Worst of the checks that leave the node, where any do. */
  readonly worst?: CheckStatus;
  readonly milliseconds: number;
}

export const THUMBNAIL_DOTS = 400;

/** A check and the node it came from. */
export interface PlacedCheck extends Check {
  readonly node: string;
}

/** What one evaluation of a whole graph hands over. */
export interface Outcome {
  readonly status: CheckStatus;
  readonly checks: readonly PlacedCheck[];
  readonly quantities: Quantities;
  /** Every file a run would write, `report.json` among them, with its length: characters of a text, bytes of any other. */
  readonly files: readonly { readonly path: string; readonly characters: number }[];
  /** Programs that are kept back because a check failed; they are handed out only as drafts. */
  readonly keptBack: readonly string[];
}

/** A node's values at full accuracy: what leaves it, drawn over what came in. */
export interface NodePicture {
  readonly node: string;
  readonly outputs: Picture;
  /** Layers of what came in, drawn faint; those whose kind and name the outputs have too are left out. */
  readonly inputs: readonly PictureLayer[];
  /** Places a person may take hold of, by output: the centres of its holes. */
  readonly spots: NamedSpots;
  /** Where strokes meet and end, by output: what edits by hand are made on. */
  readonly junctions: NamedJunctions;
  /** Whether there are programs to play back. */
  readonly playable: boolean;
  /** The set-ups of the sheet, where there are several and these values belong to them. */
  readonly setUps?: PictureSetUps;
}

export type { PlayedProgram, Relief };

/** What the page asks of the worker and is answered once. */
export interface Questions {
  /** What else there is in the set-ups of a node's sheet: pins, hold-downs, passes of other nodes. */
  around: { readonly ask: { readonly node: string }; readonly answer: readonly PictureLayer[] };
  picture: { readonly ask: { readonly node: string }; readonly answer: NodePicture };
  probe: { readonly ask: { readonly node: string; readonly at: readonly [number, number]; readonly within: number }; readonly answer: readonly Reading[] };
  playback: { readonly ask: { readonly node: string }; readonly answer: readonly PlayedProgram[] };
  /** The sheet after everything before `program`, and that program up to `seconds`. */
  relief: { readonly ask: { readonly node: string; readonly program: number; readonly seconds: number; readonly dark: boolean }; readonly answer: Relief };
  /** The files a run writes; with `draft` those kept back too, marked as drafts. */
  files: { readonly ask: { readonly graph: string; readonly draft: boolean }; readonly answer: readonly ResultFile[] };
}
export type Question = keyof Questions;

/** From page to worker. */
export type ToWorker =
  /** `newest` holds the number of the newest evaluation asked for: an older one on its way sees that it is no longer wanted. */
  | { readonly kind: 'start'; readonly newest: Int32Array | undefined }
  | {
      readonly kind: 'evaluate';
      readonly revision: number;
      readonly document: GraphDocument;
      /** Nodes whose thumbnails are in view. */
      readonly seen: readonly string[];
      /** Node shown large, whose picture comes along unasked. */
      readonly shown: string | undefined;
      /** Whether everything a run hands over is wanted, or only what is seen. */
      readonly whole: boolean;
      /** Name of the graph in the report of a run. */
      readonly graph: string;
      /** The page has no reports any more: those it was told are to be told again. */
      readonly forget: boolean;
    }
  /** No evaluation asked for before this number is wanted any more. */
  | { readonly kind: 'cancel'; readonly revision: number }
  | { readonly [Q in Question]: { readonly kind: 'ask'; readonly id: number; readonly question: Q; readonly ask: Questions[Q]['ask'] } }[Question];

/** From worker to page. */
export type FromWorker =
  | { readonly kind: 'ready'; readonly shapes: readonly NodeShape[] }
  | { readonly kind: 'progress'; readonly revision: number; readonly node: string; readonly done: number }
  | { readonly kind: 'report'; readonly revision: number; readonly node: string; readonly report: NodeReport }
  | { readonly kind: 'picture'; readonly revision: number; readonly picture: NodePicture }
  | {
      readonly kind: 'done';
      readonly revision: number;
      readonly cancelled: boolean;
      /** Present when the whole was asked for and not cancelled. */
      readonly outcome?: Outcome;
      readonly executed: readonly string[];
      readonly milliseconds: number;
    }
  | { readonly kind: 'answer'; readonly id: number; readonly value: unknown }
  | { readonly kind: 'refused'; readonly id: number; readonly problem: Problem };
