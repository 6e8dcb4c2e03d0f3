import { removeAndBridge, bridgesOver } from '../model/bridging.ts';
import { cardBoxes } from '../model/boxes.ts';
import { removeSteps } from '../model/steps.ts';
import { disconnect } from '../model/wiring.ts';
import type { Command } from './commands.ts';
import { choose, edit, editor, present, redoStep, undoStep } from './editor.ts';
import { arrangeCommands } from './arrange-commands.ts';
import { groupCommands } from './group-commands.ts';
import { copyChosen, duplicateChosen, paste } from './step-pasting.ts';
import { called, counted, refusalOfEmpty, refusalOfFewer } from './step-words.ts';
import { surroundings } from './step-surroundings.ts';

const chosen = () => editor.getState().chosen;
const oneChosen = () => refusalOfFewer(1);
/** A label that names what is chosen, when something is. */
const naming = (verb: string) => () => (chosen().length === 0 ? verb : `${verb} ${called(chosen())}`);

function removeChosen(): void {
  const ids = chosen();
  const wire = surroundings().wire();
  if (ids.length === 0 && wire !== undefined) return edit('take a wire away', disconnect(wire));
  edit(`delete ${called(ids)}`, removeSteps(ids));
}

function bridgeChosen(): void {
  const { shapes, history: { document } } = editor.getState();
  const ids = chosen();
  edit(`delete ${called(ids)} and close the gap`, removeAndBridge(shapes, document, ids).edit);
}

function refusalOfBridge(): string | undefined {
  const { shapes, history: { document } } = editor.getState();
  if (chosen().length === 0) return oneChosen();
  return bridgesOver(shapes, document, chosen()).length > 0 ? undefined : `Nothing that comes into ${called(chosen())} is of the kind that goes out. Delete it and wire the rest by hand.`;
}

const past = () => editor.getState().history.past.at(-1);
const future = () => editor.getState().history.future.at(-1);

const historyCommands: readonly Command[] = [
  {
    id: 'undo', label: 'Undo', group: 'Edit', keys: ['Mod+Z'], run: undoStep,
    labelNow: () => (past() === undefined ? 'Undo' : `Undo: ${past()!.says}`),
    refusal: () => (past() === undefined ? 'There is nothing to undo.' : undefined),
  },
  {
    id: 'redo', label: 'Redo', group: 'Edit', keys: ['Mod+Shift+Z', 'Mod+Y'], run: redoStep,
    labelNow: () => (future() === undefined ? 'Redo' : `Redo: ${future()!.says}`),
    refusal: () => (future() === undefined ? 'There is nothing to do again.' : undefined),
  },
];

const clipboardCommands: readonly Command[] = [
  { id: 'copy', label: 'Copy', labelNow: naming('Copy'), group: 'Edit', keys: ['Mod+C'], refusal: oneChosen, run: copyChosen },
  {
    id: 'cut', label: 'Cut', labelNow: naming('Cut'), group: 'Edit', keys: ['Mod+X'], refusal: oneChosen,
    run: () => {
      const done = copyChosen();
      edit(`cut ${called(chosen())}`, removeSteps(chosen()));
      return done;
    },
  },
  { id: 'paste', label: 'Paste', group: 'Edit', keys: ['Mod+V'], run: paste },
  { id: 'duplicate', label: 'Duplicate', labelNow: naming('Duplicate'), group: 'Edit', keys: ['Mod+D'], refusal: oneChosen, run: duplicateChosen },
];

const choiceCommands: readonly Command[] = [
  {
    id: 'delete', label: 'Delete', group: 'Edit', keys: ['Delete', 'Backspace'], run: removeChosen,
    labelNow: () => (chosen().length === 0 && surroundings().wire() !== undefined ? 'Take the wire away' : naming('Delete')()),
    refusal: () => (surroundings().wire() === undefined ? oneChosen() : undefined),
  },
  { id: 'delete-bridge', label: 'Delete and close the gap', group: 'Edit', keys: ['Shift+Delete', 'Shift+Backspace'], refusal: refusalOfBridge, run: bridgeChosen },
  {
    id: 'choose-all', label: 'Choose all steps', group: 'Edit', keys: ['Mod+A'], refusal: refusalOfEmpty,
    labelNow: () => `Choose all ${counted(present().nodes.length)}`,
    run: () => choose([...cardBoxes(present(), new Map()).keys()]),
  },
  {
    id: 'rename', label: 'Rename', group: 'Steps', keys: ['F2'], labelNow: naming('Rename'),
    refusal: () => oneChosen() ?? (surroundings().rename === undefined ? 'Titles are typed on the bench. Open the bench first.' : undefined),
    run: () => surroundings().rename?.(chosen().at(-1)!),
  },
];

/** Undo, redo, copy, paste and what else is done to chosen steps. */
export const stepCommands: readonly Command[] = [...historyCommands, ...clipboardCommands, ...choiceCommands, ...groupCommands, ...arrangeCommands];
