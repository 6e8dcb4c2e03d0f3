import { formatProblem } from '../../runtime/index.ts';
import { around, cardBoxes, freePlace } from '../model/boxes.ts';
import { cardsOf } from '../model/arrange.ts';
import { duplicate, pastePiece, pieceOf, refusalOfPaste } from '../model/clipboard.ts';
import { isPiece, readPiece } from '../model/pieces.ts';
import { choose, edit, editor, notify, present } from './editor.ts';
import { counted, called } from './step-words.ts';
import { surroundings } from './step-surroundings.ts';

/** What was copied last here, and whether the system's clipboard has it too: a browser may forbid that. */
let copied: { readonly text: string; readonly shared: boolean } | undefined;

/** Copies the chosen steps, for this page and where allowed for others. */
export async function copyChosen(): Promise<void> {
  const text = pieceOf(present(), editor.getState().chosen);
  copied = { text, shared: false };
  try {
    await navigator.clipboard.writeText(text);
    copied = { text, shared: true };
  } catch {
    // Without leave to use the system's clipboard the copy still works within this page.
  }
}

/** Puts in what was copied; tells why when it is nothing that can be put in. */
export async function paste(): Promise<void> {
  const text = await clipboardText();
  if (text === undefined) notify({ kind: 'caution', says: 'Nothing is copied yet. Choose steps and copy them first.' });
  else putPiece(text);
}

async function clipboardText(): Promise<string | undefined> {
  if (copied !== undefined && !copied.shared) return copied.text;
  try {
    return await navigator.clipboard.readText() || copied?.text;
  } catch {
    return copied?.text;
  }
}

/** Puts a piece into the graph, from the clipboard or from those kept, at a place clear of other cards. */
function putPiece(text: string, at = surroundings().place()): void {
  const { shapes, history: { document } } = editor.getState();
  if (!isPiece(text)) return notify({ kind: 'caution', says: 'What was copied is no steps. Choose steps on the bench and copy them, then paste.' });
  const read = readPiece(text, shapes);
  if (!read.ok) return notify({ kind: 'failed', says: `These steps cannot be put in: ${formatProblem(read.problems[0])}` });
  const refusal = refusalOfPaste(document, read.piece);
  if (refusal !== undefined) return notify({ kind: 'caution', says: refusal });
  const boxes = cardBoxes(document, surroundings().sizes());
  const block = around([...cardBoxes({ ...document, ...read.piece }, new Map()).values()])!;
  const lying = around([...boxes.values()]);
  const wanted = at ?? (lying === undefined ? [0, 0] as const : [lying.x, lying.y + lying.height] as const);
  const { edit: change, ids } = pastePiece(document, read.piece, freePlace([...boxes.values()], { ...block, x: wanted[0], y: wanted[1] }));
  edit(`put in ${counted(read.piece.nodes.length)}`, change);
  choose(ids);
}

/** Copies the chosen steps right there, below what is chosen. */
export function duplicateChosen(): void {
  const { chosen, history: { document } } = editor.getState();
  const boxes = cardBoxes(document, surroundings().sizes());
  const block = around(cardsOf(document, chosen).flatMap((id) => boxes.get(id) ?? []));
  if (block === undefined) return;
  const [x, y] = freePlace([...boxes.values()], { ...block, y: block.y + block.height });
  const { edit: change, ids } = duplicate(document, chosen, [x - block.x, y - block.y]);
  edit(`duplicate ${called(chosen)}`, change);
  choose(ids);
}
