import { arrange } from '../app/layout.ts';
import { choose, editor, present } from '../state/editor.ts';
import type { GraphDocument, GraphNode, Shapes } from '../../runtime/index.ts';

/** One stop of the tour. */
export interface TourStep {
  readonly title: string;
  readonly says: string;
  /** What it points at: the first of these that is on the page. None: it points at nothing. */
  readonly at: readonly string[];
  /** Something to try, done for the person on request. */
  readonly tries?: { readonly label: string; readonly run: () => void };
}

/** The tour of a document: it names a card and a length that are there. */
export function tourSteps(document: GraphDocument, shapes: Shapes): readonly TourStep[] {
  const first = document.nodes[0];
  const slide = slideStep(document, shapes);
  return [
    { title: 'The sheet', says: 'This is the board as it lies on the machine, to scale, lengths in millimetres. Scroll or pinch to come nearer; point at a groove to read its width.', at: ['[data-room=sheet]'] },
    { title: 'A card is a step', says: 'The work passes from card to card, left to right. A card tells in a line and a picture what came out of its step; the words at its edges say what it takes and gives, and a wire joins equal words.', at: cardPlaces(first) },
    slide,
    ...handSteps(document, shapes),
    { title: 'What to look at', says: 'Every check with its value and its limit, the gravest first. Press one, and the sheet shows the place.', at: ['[data-tour=checks]', '[data-shows=checks]'] },
    { title: 'Take the programs', says: 'When nothing failed, this hands over the machine programs with the drawing and the report. Read “Before you cut” in the list of commands first.', at: ['[data-tour=programs]', '[data-tour=file]'] },
    { title: 'Everything by name', says: 'All commands with their keys stand in one list that can be searched: F1 opens it. This tour is in it too.', at: ['[data-command=help-commands]', '.app-tools'] },
  ];
}

/** The step that has a length to move: the card with a width first, else any number, else a card. */
function slideStep(document: GraphDocument, shapes: Shapes): TourStep {
  const with_ = (fits: (name: string, unit: string) => boolean) => document.nodes.find(({ type }) =>
    Object.entries(shapes.get(type)?.params ?? {}).some(([name, param]) => param.kind === 'number' && fits(name, param.unit)));
  const node = document.nodes.find(({ id }) => id === 'groove') ?? with_((name, unit) => name === 'width' && unit === 'mm') ?? with_(() => true) ?? document.nodes[0];
  const title = node?.title ?? shapes.get(node?.type ?? '')?.title;
  return {
    title: 'Change a width', at: cardPlaces(node),
    says: `Open ${title === undefined ? 'a card' : `the card “${title}”`} and its values unfold in place. Move its width: pictures, sheet and checks follow while you move. Undo takes back anything.`,
    ...(node && { tries: { label: 'Open the card', run: () => openCard(node.id) } }),
  };
}

/** The step that takes edits made on the picture, where there is one. */
function handSteps({ nodes }: GraphDocument, shapes: Shapes): readonly TourStep[] {
  const node = nodes.find(({ type }) => shapes.get(type)?.handles?.some(({ kind }) => kind === 'edits'));
  const title = node?.title ?? shapes.get(node?.type ?? '')?.title ?? '';
  return node ? [{
    title: 'Work by hand', at: cardPlaces(node),
    says: `Choose the card “${title}” and a bar below the sheet names what can be done to it by hand: drag a place, pull from one thing to another, or click. By keys W changes the way, N walks to what can be taken, arrows choose or move, Enter takes. Each is an entry in the card’s list.`,
  }] : [];
}

const cardPlaces = (node: GraphNode | undefined): readonly string[] =>
  [...(node ? [`[data-room=bench] [data-node="${node.id}"]`] : []), '[data-room=bench] [data-node]', '[data-room=bench]'];

function openCard(id: string): void {
  if (!present().nodes.some((node) => node.id === id)) return;
  arrange({ rooms: 'both' });
  choose([id]);
  editor.setState(({ opened }) => ({ opened: opened.includes(id) ? opened : [...opened, id] }));
}
