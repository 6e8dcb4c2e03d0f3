import type { Command } from '../state/commands.ts';

/** What is done to the bench's view and by its keys. */
export const benchCommands: readonly Command[] = [];
