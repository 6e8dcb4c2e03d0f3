import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { allCommands } from '../app/commands.ts';
import { labelOf, runCommand } from '../app/run.ts';
import { Dialog } from '../look/Dialog.tsx';
import type { Command } from '../state/commands.ts';
import { findCommands } from './find-commands.ts';
import { KeyWords } from './KeyWords.tsx';

interface CommandListProps {
  readonly commands?: readonly Command[];
  readonly onClose: () => void;
}

/** Everything that can be done, to be searched: with its keys, and with the reason where it cannot be done now. */
export function CommandList({ commands = allCommands, onClose }: CommandListProps) {
  const [search, setSearch] = useState('');
  const [at, setAt] = useState(0);
  const id = useId();
  const found = findCommands(commands, search);
  const current = found[Math.min(at, found.length - 1)];
  const list = useFollowing(current?.id);
  // Closed first: the focus is back in its place when the command looks at it, and a dialog it opens lies alone.
  const take = (command: Command) => {
    if (command.refusal?.() !== undefined) return;
    flushSync(onClose);
    runCommand(command);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const next = cursorAfter(event.key, Math.min(at, found.length - 1), found.length);
    if (next !== undefined) setAt(next);
    else if (event.key === 'Enter' && current) take(current);
    else return;
    event.preventDefault();
  };
  return (
    <Dialog title="All commands" onClose={onClose} wide>
      <input
        className="field help-search" type="search" placeholder="Search: undo, wire, zoom …" aria-label="Search the commands" data-first
        role="combobox" aria-expanded="true" aria-controls={id} aria-activedescendant={current && `${id} ${current.id}`.replaceAll(' ', '-')}
        value={search} onChange={(event) => { setSearch(event.target.value); setAt(0); }} onKeyDown={onKeyDown}
      />
      <p className="visually-hidden" role="status">{found.length} {found.length === 1 ? 'command' : 'commands'}</p>
      {found.length === 0 && <p className="help-none">No command says “{search}”. Try another word, or one word only.</p>}
      <div ref={list} id={id} className="help-list" role="listbox" aria-label="Commands">
        {found.map((command, index) => (
          <Line
            key={command.id} id={`${id} ${command.id}`.replaceAll(' ', '-')} command={command} current={command === current}
            heading={command.group === found[index - 1]?.group ? undefined : command.group} onTake={() => take(command)}
          />
        ))}
      </div>
    </Dialog>
  );
}

/** Keeps the current line in view. */
function useFollowing(current: string | undefined) {
  const list = useRef<HTMLDivElement>(null);
  useEffect(() => {
    list.current?.querySelector('[aria-selected=true]')?.scrollIntoView({ block: 'nearest' });
  }, [current]);
  return list;
}

/** Where the cursor goes in a list of `count` lines; undefined for keys that do not move it. */
export function cursorAfter(key: string, at: number, count: number): number | undefined {
  const moves: Readonly<Record<string, number>> = { ArrowDown: at + 1, ArrowUp: at - 1, PageDown: at + 8, PageUp: at - 8 };
  const next = moves[key];
  return next === undefined ? undefined : Math.max(0, Math.min(count - 1, next));
}

interface LineProps {
  readonly id: string;
  readonly command: Command;
  readonly current: boolean;
  readonly heading: string | undefined;
  readonly onTake: () => void;
}

function Line({ id, command, current, heading, onTake }: LineProps) {
  const refusal = command.refusal?.();
  return (
    <>
      {heading !== undefined && <div className="help-heading" role="presentation">{heading}</div>}
      <div id={id} className="help-line" role="option" aria-selected={current} aria-disabled={refusal !== undefined} onClick={onTake}>
        <span className="help-label">{labelOf(command)}</span>
        {command.keys && <KeyWords keys={command.keys} />}
        {refusal !== undefined && <span className="help-refusal">Not now: {refusal}</span>}
      </div>
    </>
  );
}
