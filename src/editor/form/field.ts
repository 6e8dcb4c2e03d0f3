import type { Param, ParamValue, Problem } from '../../runtime/index.ts';

/** What is told at a field about its value: what stopped the node, or what is worth a look. */
export interface FieldProblem {
  readonly kind: 'problem' | 'caution';
  readonly problem: Problem;
  /** The entry of a list that is meant, counted from 0; absent when all of the value is. */
  readonly at?: number;
}

/** What every field takes. Fields know no store: whoever shows them binds `onEdit`. */
export interface FieldProps<P extends Param = Param> {
  readonly param: P;
  /** The present value; the parameter's default where the document has none. It may not fit the parameter: a document can come from elsewhere. */
  readonly value: unknown;
  readonly label: string;
  readonly doc: string;
  readonly problems: readonly FieldProblem[];
  /** Names of the recipe's inputs that set it. */
  readonly exposed?: readonly string[];
  /** More about the field, in sentences: what the sheet lets a person do to it. */
  readonly notes?: readonly string[];
  /** Sets the value; edits with the same gesture are one step to undo. */
  readonly onEdit: (value: ParamValue, gesture?: string) => void;
  /** Has the recipe's form ask for it, or no longer; absent where that is not decided. */
  readonly onAsk?: (asks: boolean) => void;
  /** Puts the default back. */
  readonly onReset: () => void;
  /** Hears which entry of a list is pointed at, and whether the sheet is to go there. */
  readonly onPoint?: (index: number | undefined, goes?: boolean) => void;
  /** Hears of a drag's begin and end. */
  readonly onGesture: (active: boolean) => void;
}

/** A problem as the sentences a field shows: the place is the field itself. */
export function sentence({ expected, found, advice }: Problem): string {
  return `Expected ${expected}, found ${found}. ${advice}`;
}
