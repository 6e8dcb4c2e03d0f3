import { moveSteps } from '../model/steps.ts';
import type { Command } from '../state/commands.ts';
import { edit, editor } from '../state/editor.ts';
import { called, refusalOfEmpty, refusalOfFewer } from '../state/step-words.ts';
import { toggleOpened } from './actions.ts';
import { focusInside } from './focus.ts';
import { currentGraph } from './follow.ts';
import { insertInto } from './menu-entries.ts';
import { bench, seenBox, viewport } from './state.ts';
import { zoomBy, zoomToChosen, zoomToFit } from './zoom.ts';

/** The card that commands act on: the one chosen last, else the one with the focus. */
const actedOn = (): string | undefined => [editor.getState().chosen.at(-1), bench.getState().focused].find((id) => id !== undefined && currentGraph().cards.has(id));

const refusalOfNone = (): string | undefined => (actedOn() === undefined ? 'No step is chosen. Choose one on the bench first.' : undefined);

/** A little inside the upper left of what is seen. */
export function placeInView(): readonly [number, number] {
  const { x, y, width, height } = seenBox(viewport.getState());
  return [Math.round(x + width * 0.35), Math.round(y + height * 0.25)];
}

const isOpen = (): boolean => editor.getState().opened.includes(actedOn() ?? '');

function openCard(): void {
  const id = actedOn()!;
  toggleOpened(id);
  if (isOpen()) setTimeout(() => focusInside(id));
}

/** Steps that Alt with an arrow key takes, in bench units: coarse, or fine with Shift. */
const NUDGE = { coarse: 16, fine: 1 };

function nudge(id: string, label: string, key: string, [x, y]: readonly [number, number]): readonly Command[] {
  const by = (step: number) => () => {
    const { chosen } = editor.getState();
    edit(`move ${called(chosen)}`, moveSteps(chosen, x * step, y * step), `nudge ${chosen.join(' ')}`);
  };
  const base = { group: 'Steps', refusal: () => refusalOfFewer(1) } as const;
  return [
    { ...base, id, label: `Move ${label}`, keys: [`Alt+${key}`], run: by(NUDGE.coarse) },
    { ...base, id: `${id}-fine`, label: `Move ${label} a little`, keys: [`Alt+Shift+${key}`], run: by(NUDGE.fine) },
  ];
}

const chosenWire = (): string | undefined => bench.getState().chosenWire;

const stepwise: readonly Command[] = [
  { id: 'add-step', label: 'Add a step', group: 'Steps', keys: ['A', 'Insert'], run: () => bench.setState({ adding: { at: placeInView() } }) },
  {
    id: 'insert-step', label: 'Insert a step into the chosen wire', group: 'Steps', keys: ['I'], run: () => insertInto(chosenWire()!),
    refusal: () => (chosenWire() === undefined ? 'No wire is chosen. Click one first.' : undefined),
  },
  { id: 'open-card', label: 'Open or fold the step', labelNow: () => (isOpen() ? 'Fold' : 'Open'), group: 'Steps', keys: ['O'], refusal: refusalOfNone, run: openCard },
  { id: 'fold-all', label: 'Fold all cards', group: 'View', keys: ['Shift+O'], run: () => editor.setState({ opened: [] }) },
  { id: 'wire-card', label: 'Wire…', group: 'Steps', keys: ['W'], refusal: refusalOfNone, run: () => bench.setState({ wiring: { card: actedOn()! } }) },
  ...nudge('move-left', 'left', 'ArrowLeft', [-1, 0]), ...nudge('move-right', 'right', 'ArrowRight', [1, 0]),
  ...nudge('move-up', 'up', 'ArrowUp', [0, -1]), ...nudge('move-down', 'down', 'ArrowDown', [0, 1]),
];

/** What one turn of a zoom key does. */
const ZOOM = 1.25;

const viewing: readonly Command[] = [
  { id: 'zoom-fit', label: 'See the whole bench', group: 'View', keys: ['F'], refusal: refusalOfEmpty, run: zoomToFit },
  { id: 'zoom-chosen', label: 'See what is chosen', group: 'View', keys: ['Shift+F'], refusal: () => refusalOfFewer(1), run: zoomToChosen },
  { id: 'bench-zoom-in', label: 'Bench: larger', group: 'View', keys: ['+', '='], run: () => zoomBy(ZOOM) },
  { id: 'bench-zoom-out', label: 'Bench: smaller', group: 'View', keys: ['-'], run: () => zoomBy(1 / ZOOM) },
  { id: 'bench-overview', label: 'Overview of the bench', labelNow: () => `${bench.getState().overview ? 'Hide' : 'Show'} the overview`, group: 'View', run: () => bench.setState(({ overview }) => ({ overview: !overview })) },
  { id: 'bench-notes', label: 'Notes on the cards', labelNow: () => `${bench.getState().notes ? 'Hide' : 'Show'} the notes on the cards`, group: 'View', keys: ['N'], run: () => bench.setState(({ notes }) => ({ notes: !notes })) },
];

/** What is done to the bench's view and by its keys. */
export const benchCommands: readonly Command[] = [...stepwise, ...viewing];
