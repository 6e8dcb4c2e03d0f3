import { labelOf } from '../app/run.ts';
import type { Command } from '../state/commands.ts';

/** The order of headings in the lists. */
export const GROUPS: readonly Command['group'][] = ['Document', 'Edit', 'Steps', 'Sheet', 'View', 'Help'];

/** Commands that have every word of a search in what they say, under their headings; those that begin with it come first in each. */
export function findCommands(commands: readonly Command[], search: string): readonly Command[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const whole = words.join(' ');
  const hits = commands.filter((command) => words.every((word) => textOf(command).includes(word)));
  const rank = (command: Command) => GROUPS.indexOf(command.group) * 2 + (labelOf(command).toLowerCase().startsWith(whole) ? 0 : 1);
  return hits.toSorted((a, b) => rank(a) - rank(b));
}

const textOf = (command: Command): string => [command.label, labelOf(command), command.group, ...(command.keys ?? [])].join(' ').toLowerCase();
