import type { Command } from '../state/commands.ts';
import { editor } from '../state/editor.ts';
import { stepCommands } from '../state/step-commands.ts';
import { removeWire } from './actions.ts';
import { benchCommands } from './commands.ts';
import { currentGraph } from './follow.ts';
import { lie } from './lie.ts';
import { type OpenMenu, bench } from './state.ts';
import { middleOf } from './wire-path.ts';

/** The lines of a menu. Those of a card act on what is chosen, of which the card is one. */
export function entriesFor({ on, id }: OpenMenu): readonly Command[] {
  if (on === 'wire') return wireEntries(id);
  if (on === 'bench') return [...pick(benchCommands, ['add-step']), ...pick(stepCommands, ['paste', 'choose-all', 'lay-out']), ...pick(benchCommands, ['zoom-fit', 'bench-notes', 'bench-overview'])];
  const several = editor.getState().chosen.length > 1;
  return [
    ...pick(benchCommands, ['open-card', 'wire-card']),
    ...pick(stepCommands, ['rename', 'copy', 'cut', 'duplicate', 'delete', 'delete-bridge', 'group']),
    ...pick(stepCommands, ['ungroup', 'fold-group', 'keep-group']).filter(({ refusal }) => refusal?.() === undefined),
    ...stepCommands.filter((command) => several && command.id.startsWith('align')),
    ...pick(benchCommands, ['zoom-chosen']),
  ];
}

const pick = (commands: readonly Command[], ids: readonly string[]): readonly Command[] => ids.flatMap((id) => commands.filter((command) => command.id === id));

function wireEntries(key: string): readonly Command[] {
  const wire = currentGraph().wires.get(key)?.wire;
  if (wire === undefined) return [];
  return [
    { id: 'insert', label: 'Insert a step', group: 'Steps', run: () => insertInto(key) },
    { id: 'take', label: 'Take the wire away', group: 'Steps', keys: ['Delete'], run: () => removeWire(wire) },
  ];
}

/** Asks for a step to put into a wire. */
export function insertInto(key: string): void {
  const wire = currentGraph().wires.get(key)?.wire;
  if (wire !== undefined) bench.setState({ adding: { at: middleOf(lie.getState().turns.get(key) ?? []), into: wire } });
}
