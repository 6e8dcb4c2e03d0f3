import type { Command } from '../state/commands.ts';
import { openAsked } from './state.ts';

/** Making a graph into a recipe. */
export const recipeCommands: readonly Command[] = [
  { id: 'recipe-asked', label: 'What the form asks for…', group: 'Document', run: openAsked },
];
