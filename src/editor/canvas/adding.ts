import type { GraphDocument, Shapes } from '../../runtime/index.ts';
import { freePlace } from '../model/boxes.ts';
import { type Found, type Offered, type Wanted, findSteps } from '../model/find.ts';
import { portAt } from '../model/graph.ts';
import type { Edit } from '../model/history.ts';
import { fitsOnWire, insertOnWire } from '../model/inserting.ts';
import { pastePiece } from '../model/clipboard.ts';
import { readPiece } from '../model/pieces.ts';
import { addStep, addStepAt } from '../model/steps.ts';
import { CARD } from './card-layout.ts';
import { cardSizes, lie } from './lie.ts';
import type { Adding } from './state.ts';

/** What can be added there: with a port only what it can be wired to, on a wire only what can be put into it. */
export function offersFor(offered: Offered, document: GraphDocument, { port, into }: Adding, query: string): readonly Found[] {
  if (into !== undefined) {
    const fitting = new Set(fitsOnWire(offered.shapes, document, into));
    return findSteps({ shapes: offered.shapes }, query).filter((found) => found.kind === 'type' && fitting.has(found.type));
  }
  return findSteps(offered, query, wantedBy(offered.shapes, document, port));
}

/** What a port that a new step is to be wired to asks for. */
export function wantedBy(shapes: Shapes, document: GraphDocument, port: Adding['port']): Wanted | undefined {
  const type = port && portAt(shapes, document, port)?.type;
  return port === undefined || type === undefined ? undefined : { side: port.side, type };
}

export type Addition =
  | { readonly ok: true; readonly says: string; readonly edit: Edit; readonly ids: readonly string[] }
  | { readonly ok: false; readonly refusal: string };

/** The edit that adds what was found where it was asked for, wired where that was asked for. */
export function additionOf(shapes: Shapes, document: GraphDocument, adding: Adding, found: Found): Addition {
  if (found.kind === 'piece') return pieceAdded(shapes, document, adding, found.piece.text);
  const says = `add ${found.title}`;
  if (adding.into !== undefined) {
    const inserted = insertOnWire(shapes, document, adding.into, { type: found.type }, cardSizes());
    return inserted.ok ? { ok: true, says: `insert ${found.title}`, edit: inserted.edit, ids: [inserted.id] } : inserted;
  }
  const at = placeFor(adding);
  const made = adding.port !== undefined && found.port !== undefined
    ? addStepAt(shapes, document, found.type, at, { port: found.port.name, to: adding.port })
    : addStep(document, found.type, at);
  return { ok: true, says, edit: made.edit, ids: [made.id] };
}

function pieceAdded(shapes: Shapes, document: GraphDocument, adding: Adding, text: string): Addition {
  const read = readPiece(text, shapes);
  if (!read.ok) return { ok: false, refusal: read.problems[0].advice };
  const pasted = pastePiece(document, read.piece, placeFor(adding));
  return { ok: true, says: `add ${read.piece.title}`, edit: pasted.edit, ids: pasted.ids };
}

/** Where it was asked for, or the nearest place clear of other cards. A step that gives to an input lies to the left of it. */
function placeFor({ at: [x, y], port }: Adding): readonly [number, number] {
  const wanted = { x: Math.round(port?.side === 'input' ? x - CARD.width : x), y: Math.round(y), width: CARD.width, height: CARD.height };
  return freePlace([...lie.getState().boxes.values()], wanted);
}
