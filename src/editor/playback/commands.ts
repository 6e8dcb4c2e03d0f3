import type { Command } from '../state/commands.ts';

/** What is done while programs are played back. */
export const playbackCommands: readonly Command[] = [];
