import { benchCommands } from '../canvas/commands.ts';
import { fileCommands } from '../files/commands.ts';
import { helpCommands } from '../help/commands.ts';
import { playbackCommands } from '../playback/commands.ts';
import { sheetCommands } from '../sheet/commands.ts';
import type { Command } from '../state/commands.ts';
import { recipeCommands } from '../recipe/commands.ts';
import { stepCommands } from '../state/step-commands.ts';
import { layoutCommands } from './layout-commands.ts';

/** Everything that can be done by name or key. */
export const allCommands: readonly Command[] = [
  ...fileCommands, ...recipeCommands, ...stepCommands, ...benchCommands, ...sheetCommands, ...playbackCommands, ...layoutCommands, ...helpCommands,
];
