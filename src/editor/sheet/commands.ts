import type { Command } from '../state/commands.ts';

/** What is done to the sheet's view. */
export const sheetCommands: readonly Command[] = [];
