import { formatProblem, type Problem } from '../../runtime/index.ts';
import type { Command } from '../state/commands.ts';
import { editor, notify } from '../state/editor.ts';

/** What a command says as things stand now. */
export const labelOf = ({ label, labelNow }: Command): string => labelNow?.() ?? label;

/** Does what a command says; where that is not possible now, or goes wrong, a notice says why. */
export function runCommand(command: Command): void {
  const refusal = command.refusal?.();
  if (refusal !== undefined) return tell('caution', refusal);
  try {
    void Promise.resolve(command.run()).catch((fault: unknown) => tellFault(command, fault));
  } catch (fault) {
    tellFault(command, fault);
  }
}

function tellFault({ label }: Command, fault: unknown): void {
  tell('failed', `“${label}” stopped: ${saidOf(fault)}`);
}

function saidOf(fault: unknown): string {
  if (isProblem(fault)) return formatProblem(fault);
  return fault instanceof Error ? fault.message : String(fault);
}

const isProblem = (fault: unknown): fault is Problem =>
  typeof fault === 'object' && fault !== null && 'expected' in fault && 'found' in fault && 'advice' in fault;

/** A sentence that is already there is not said twice: a key may be pressed often. */
function tell(kind: 'caution' | 'failed', says: string): void {
  if (!editor.getState().notices.some((notice) => notice.says === says)) notify({ kind, says });
}
