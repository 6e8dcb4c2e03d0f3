import { show, editor } from '../state/editor.ts';
import type { Command } from '../state/commands.ts';
import { fitTo, lookAtSetUp, zoom } from './camera.ts';
import { addingHandle, removePlace } from './gestures.ts';
import { allGrips } from './grips.ts';
import { stepWay } from './hand/doing.ts';
import { dropHand } from './hand/hand-keys.ts';
import { waysOf } from './hand/ways.ts';
import { takeNext } from './keys.ts';
import { pin } from './pin.ts';
import { aloneOf } from './set-ups.ts';
import { type Tool, sheet, takeTool } from './store.ts';
import { subject } from './subject.ts';

/** One key or button of zooming. */
const ZOOM = 1.25;

const nothingShown = (): string | undefined => (editor.getState().picture ? undefined : 'The sheet shows nothing yet.');

const nothingHeld = (): string | undefined => {
  const shown = subject();
  return shown && (allGrips(shown).length > 0 || waysOf(shown).length > 0) ? undefined : 'Nothing on the sheet can be moved by hand: choose a step that says what it lets be moved.';
};

const noWays = (): string | undefined => {
  const shown = subject();
  return shown && waysOf(shown).length > 0 ? undefined : 'Nothing is done by hand to what the sheet shows: choose a step that takes edits made on the picture.';
};

const walkWays = (step: 1 | -1): void => {
  dropHand();
  stepWay(step);
};

const oneSetUp = (): string | undefined => (editor.getState().picture?.setUps ? undefined : 'What the sheet shows is not cut in several set-ups.');

/** All set-ups, then each alone, and round again. */
function walkSetUps(step: 1 | -1): void {
  const { picture } = editor.getState();
  const count = (picture?.setUps?.list.length ?? 0) + 1;
  const now = (aloneOf(picture, sheet.getState().setUp)?.place ?? -1) + 1;
  const next = (now + step + count) % count;
  lookAtSetUp(next === 0 ? undefined : next - 1);
}

/** Takes up a tool, or puts it down when it is the one in use. */
export const toggleTool = (tool: Tool): void => takeTool(sheet.getState().tool === tool ? 'look' : tool);

/** What is done to the sheet's view, and to what can be taken hold of on it. */
export const sheetCommands: readonly Command[] = [
  { id: 'sheet-whole', label: 'Show the whole sheet', group: 'Sheet', keys: ['0'], refusal: nothingShown, run: () => fitTo('sheet') },
  { id: 'sheet-all', label: 'Show all of the picture', group: 'Sheet', keys: ['1'], refusal: nothingShown, run: () => fitTo('all') },
  { id: 'sheet-nearer', label: 'Look nearer', group: 'Sheet', keys: ['+', '='], refusal: nothingShown, run: () => zoom(ZOOM) },
  { id: 'sheet-farther', label: 'Look from farther away', group: 'Sheet', keys: ['-'], refusal: nothingShown, run: () => zoom(1 / ZOOM) },
  { id: 'sheet-tape', label: 'Tape: measure between two places', group: 'Sheet', keys: ['T'], refusal: nothingShown, run: () => toggleTool('tape') },
  { id: 'sheet-read', label: 'Read widths and radii with a cursor moved by keys', group: 'Sheet', keys: ['R'], refusal: nothingShown, run: () => toggleTool('read') },
  {
    id: 'sheet-order', label: 'Order and direction of strokes and passes', group: 'Sheet', keys: ['O'],
    labelNow: () => (sheet.getState().order ? 'Hide order and direction' : 'Show order and direction'),
    run: () => sheet.setState(({ order }) => ({ order: !order })),
  },
  { id: 'sheet-next', label: 'Take hold of the next thing that can be moved', group: 'Sheet', keys: ['N'], refusal: nothingHeld, run: () => void takeNext(1) },
  { id: 'sheet-previous', label: 'Take hold of the one before', group: 'Sheet', keys: ['Shift+N'], refusal: nothingHeld, run: () => void takeNext(-1) },
  { id: 'sheet-set-up-next', label: 'Look at the next set-up alone', group: 'Sheet', keys: ['U'], refusal: oneSetUp, run: () => walkSetUps(1) },
  { id: 'sheet-set-up-before', label: 'Look at the set-up before', group: 'Sheet', keys: ['Shift+U'], refusal: oneSetUp, run: () => walkSetUps(-1) },
  { id: 'sheet-way-next', label: 'Work by hand: the next way', group: 'Sheet', keys: ['W'], refusal: noWays, run: () => walkWays(1) },
  { id: 'sheet-way-before', label: 'Work by hand: the way before', group: 'Sheet', keys: ['Shift+W'], refusal: noWays, run: () => walkWays(-1) },
  {
    id: 'sheet-add', label: 'Add a place by hand', group: 'Sheet', keys: ['A'],
    refusal: () => (addingHandle() === undefined ? 'The step shown has no places that are put by hand.' : undefined),
    run: () => toggleTool('add'),
  },
  {
    id: 'sheet-remove', label: 'Remove the place held', group: 'Sheet',
    refusal: () => (sheet.getState().grip?.place === undefined ? 'No place is held: choose one on the sheet first.' : undefined),
    run: () => {
      const { grip } = sheet.getState();
      if (grip) removePlace(grip);
    },
  },
  { id: 'sheet-sign', label: 'Show the whole sign', group: 'Sheet', run: () => { pin(false); show(undefined); } },
  {
    id: 'sheet-pin', label: 'Pin what the sheet shows', group: 'Sheet', keys: ['K'], refusal: nothingShown,
    labelNow: () => (editor.getState().pinned ? 'Let the sheet follow what is chosen' : 'Pin what the sheet shows'),
    run: () => pin(!editor.getState().pinned),
  },
];
