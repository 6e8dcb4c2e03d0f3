import type { Command } from '../state/commands.ts';
import { editor } from '../state/editor.ts';
import { openNew, openPicked, unlessUnsaved } from './open.ts';
import { print } from './print.ts';
import { takeAll, whyNoResults } from './results.ts';
import { save, saveAs, saveOriginal } from './save.ts';
import { ask } from './state.ts';

const whyNoDamage = () => (editor.getState().file.damage === undefined ? 'The recipe was read without a problem.' : undefined);
const whyNone = () => whyNoResults(editor.getState());

/** Opening, saving, taking results. */
export const fileCommands: readonly Command[] = [
  { id: 'file-new', label: 'New recipe', group: 'Document', run: () => unlessUnsaved(openNew) },
  { id: 'file-open', label: 'Open a file…', group: 'Document', keys: ['Mod+O'], run: openPicked },
  { id: 'file-recipes', label: 'Open a shipped recipe…', group: 'Document', run: () => { ask({ kind: 'open', first: 'recipes' }); } },
  { id: 'file-recent', label: 'Open a recent recipe…', group: 'Document', run: () => { ask({ kind: 'open', first: 'recent' }); } },
  { id: 'file-save', label: 'Save', group: 'Document', keys: ['Mod+S'], run: async () => { await save(); } },
  { id: 'file-save-as', label: 'Save as…', group: 'Document', keys: ['Mod+Shift+S'], run: async () => { await saveAs(); } },
  { id: 'file-programs', label: 'Take the programs…', group: 'Document', refusal: whyNone, run: () => { ask({ kind: 'programs' }); } },
  { id: 'file-results', label: 'List the results…', group: 'Document', refusal: whyNone, run: () => { ask({ kind: 'results' }); } },
  { id: 'file-all', label: 'Take all results', group: 'Document', refusal: whyNone, run: takeAll },
  { id: 'file-print', label: 'Print…', group: 'Document', keys: ['Mod+P'], run: print },
  { id: 'file-damage', label: 'List the problems of the file', group: 'Document', refusal: whyNoDamage, run: () => { ask({ kind: 'damage' }); } },
  { id: 'file-original', label: 'Save the original text', group: 'Document', refusal: whyNoDamage, run: saveOriginal },
];
