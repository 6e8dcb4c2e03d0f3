import type { Command } from '../state/commands.ts';
import { goToTourStep, openHelp } from './state.ts';

/** The tour, the lists of commands and keys, and what to heed before a cut. */
export const helpCommands: readonly Command[] = [
  { id: 'help-commands', label: 'All commands', group: 'Help', keys: ['F1', 'Mod+K', '?'], run: () => openHelp('commands') },
  { id: 'help-keys', label: 'List the keys', group: 'Help', run: () => openHelp('keys') },
  { id: 'help-tour', label: 'Show the tour', group: 'Help', run: () => goToTourStep(0) },
  { id: 'help-cautions', label: 'Before you cut', group: 'Help', run: () => openHelp('cautions') },
];
