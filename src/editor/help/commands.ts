import type { Command } from '../state/commands.ts';

/** The tour and the lists of keys and commands. */
export const helpCommands: readonly Command[] = [];
