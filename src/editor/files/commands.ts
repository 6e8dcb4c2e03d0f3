import type { Command } from '../state/commands.ts';

/** Opening, saving, taking results. */
export const fileCommands: readonly Command[] = [];
