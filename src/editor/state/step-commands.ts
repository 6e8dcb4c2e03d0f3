import type { Command } from './commands.ts';

/** Undo, redo, copy, paste and what else is done to chosen steps. */
export const stepCommands: readonly Command[] = [];
