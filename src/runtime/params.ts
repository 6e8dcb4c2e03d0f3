/** Units a number parameter may carry. Conversion happens where a value is read or shown, never in a node. */
export type Unit = 'mm' | 'mm2' | 'mm/min' | 'mm/s2' | 'mm/tooth' | '1/min' | 'deg' | 's' | 'kg/m3' | 'kg/m' | 'N' | 'MPa' | 'K' | 'W' | 'V' | 'A' | 'W/m' | 'lm/m' | 'ohm/m' | 'count' | 'ratio';

/** The content of a file, as plain data: text when its bytes are UTF-8, base64 otherwise. */
export type FileValue =
  | { readonly name: string; readonly text: string }
  | { readonly name: string; readonly base64: string };

export interface NumberParam {
  readonly kind: 'number';
  readonly unit: Unit;
  readonly default: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly label: string;
  readonly doc: string;
}

export interface ChoiceParam {
  readonly kind: 'choice';
  readonly options: readonly [string, ...string[]];
  readonly default: string;
  readonly label: string;
  readonly doc: string;
}

export interface TextParam {
  readonly kind: 'text';
  readonly default: string;
  readonly maxLength: number;
  readonly label: string;
  readonly doc: string;
}

export interface FileParam {
  readonly kind: 'file';
  /** File name endings, each with its dot. */
  readonly accept: readonly [string, ...string[]];
  readonly label: string;
  readonly doc: string;
}

export interface SwitchParam {
  readonly kind: 'switch';
  readonly default: boolean;
  readonly label: string;
  readonly doc: string;
}

/** A list of places in mm, put there by hand. */
export interface PointsParam {
  readonly kind: 'points';
  readonly default: readonly { readonly x: number; readonly y: number }[];
  readonly label: string;
  readonly doc: string;
}

/**
 * What a place of an act is taken from on a picture: any place along a `stroke`; the `piece` of a stroke between the junctions
 * or ends on both sides, as a whole; a free `end`; a `junction`; an `arm` of the junction taken just before; or `anywhere`.
 */
export type PlaceOn = 'stroke' | 'piece' | 'end' | 'junction' | 'arm' | 'anywhere';

/** What may be done to a picture by hand: how many places it takes, least and most. */
export interface Act {
  readonly places: readonly [number, number];
  /** What its places are taken from, in their order, further ones as the last; anywhere unless stated. */
  readonly on?: readonly [PlaceOn, ...PlaceOn[]];
  readonly label: string;
  readonly doc: string;
}

/**
 * One thing done by hand. Its places are fractions of a frame's size counted from its lower left corner, y up, so that
 * they stay where they were on what is drawn when all of it is scaled or shifted.
 */
export interface Edit {
  readonly act: string;
  readonly places: readonly { readonly x: number; readonly y: number }[];
}

/** A list of things done by hand to what came in, in the order they are done. */
export interface EditsParam {
  readonly kind: 'edits';
  readonly acts: Readonly<Record<string, Act>>;
  readonly default: readonly Edit[];
  readonly label: string;
  readonly doc: string;
}

export type Param = NumberParam | ChoiceParam | TextParam | FileParam | SwitchParam | PointsParam | EditsParam;
export type Params = Readonly<Record<string, Param>>;

/** What `compute` receives for a parameter. A file that was not chosen is null. Without argument: any parameter's value. */
export type ParamValue<P = Param> =
  P extends { kind: 'choice'; options: readonly (infer O)[] } ? O
  : P extends NumberParam ? number
  : P extends TextParam ? string
  : P extends FileParam ? FileValue | null
  : P extends SwitchParam ? boolean
  : P extends PointsParam ? PointsParam['default']
  : P extends EditsParam ? EditsParam['default']
  : never;

/** Parameter values by name; never for a node known only at run time, as with its inputs. */
export type ParamValues<P extends Params> = string extends keyof P ? never : { readonly [K in keyof P]: ParamValue<P[K]> };

/** Values by parameter name, of a node whose parameters are known only at run time. */
export type AnyParamValues = Readonly<Record<string, ParamValue>>;
