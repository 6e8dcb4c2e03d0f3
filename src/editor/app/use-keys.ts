import { useEffect } from 'react';
import type { Command } from '../state/commands.ts';
import { commandOf } from './keys.ts';
import { runCommand } from './run.ts';

/**
 * Listens for the keys of commands while the page is there. Whoever handled a key already has prevented its default; an
 * open dialog has all keys to itself.
 */
export function useKeys(commands: readonly Command[]): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.isComposing || document.querySelector('dialog[open]') !== null) return;
      const command = commandOf(commands, event);
      if (command === undefined || (event.key === 'Escape' && command.refusal?.() !== undefined)) return;
      event.preventDefault();
      runCommand(command);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [commands]);
}
