import { type GraphProblem, type Salvage, type Shapes, readDamaged } from '../../runtime/index.ts';

const NOT_TEXT: GraphProblem = {
  place: 'the file', code: 'not-json', expected: 'UTF-8 text', found: 'bytes that are none',
  advice: 'Where they stood there are now question marks: compare with a copy of the file.',
};

export interface FileText {
  readonly text: string;
  readonly problems: readonly GraphProblem[];
}

/** The text of a file's bytes; bytes that are no text are told and replaced. */
export function textOf(bytes: ArrayBuffer): FileText {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), problems: [] };
  } catch {
    return { text: new TextDecoder('utf-8').decode(bytes), problems: [NOT_TEXT] };
  }
}

/** Whether the text is whole enough to be opened unasked: JSON that holds a graph, whatever is wrong with that graph. */
export const isWhole = ({ document, problems }: Salvage): boolean =>
  document !== undefined && !problems.some(({ code, place }) => code === 'not-json' && place !== NOT_TEXT.place);

/** Reads a recipe's file, as far as it can be read. */
export function readFile({ text, problems }: FileText, shapes: Shapes): Salvage {
  const read = readDamaged(text, shapes);
  return problems.length === 0 ? read : { ...read, problems: [...problems, ...read.problems] };
}
