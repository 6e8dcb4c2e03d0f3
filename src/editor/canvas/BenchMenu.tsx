import { type KeyboardEvent, useEffect, useRef } from 'react';
import type { Command } from '../state/commands.ts';
import { shownKeys } from '../app/keys.ts';
import { useEditor } from '../state/editor.ts';
import { focusCard } from './focus.ts';
import { entriesFor } from './menu-entries.ts';
import { Popup } from './Popup.tsx';
import { type OpenMenu, bench, useBench } from './state.ts';

/** What can be done with the card, the wire or the bench that was asked: by right click, long press or the menu key. */
export function BenchMenu() {
  const menu = useBench((state) => state.menu);
  return menu === undefined ? null : <Menu key={menu.id + menu.at.join(' ')} menu={menu} />;
}

function close(menu: OpenMenu): void {
  bench.setState({ menu: undefined });
  if (menu.on === 'card') focusCard(menu.id);
}

function Menu({ menu }: { readonly menu: OpenMenu }) {
  useEditor((state) => state.history);
  const list = useRef<HTMLDivElement>(null);
  useEffect(() => list.current?.querySelector<HTMLElement>('[role=menuitem]')?.focus({ preventScroll: true }), []);
  const leave = () => close(menu);
  return (
    <Popup role="menu" label={{ card: 'What to do with this step', wire: 'What to do with this wire', bench: 'What to do here' }[menu.on]} at={menu.at} onClose={leave}>
      <div ref={list} className="bench-menu" role="none" onKeyDown={(event) => walk(event, leave)}>
        {entriesFor(menu).map((command) => <Item key={command.id} command={command} menu={menu} />)}
      </div>
    </Popup>
  );
}

function walk(event: KeyboardEvent<HTMLDivElement>, leave: () => void): void {
  const items = [...event.currentTarget.querySelectorAll<HTMLElement>('[role=menuitem]')];
  const at = items.indexOf(document.activeElement as HTMLElement);
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: items.length - 1 }[event.key] ?? itemBeginning(items, event.key, at);
  if (event.key === 'Tab') leave();
  if (to === undefined) return;
  event.preventDefault();
  event.stopPropagation();
  items[(to + items.length) % items.length]?.focus();
}

/** The next item that begins with the letter typed. */
function itemBeginning(items: readonly HTMLElement[], key: string, at: number): number | undefined {
  if (!/^\p{L}$/u.test(key)) return undefined;
  const order = items.map((_, i) => (at + 1 + i) % items.length);
  return order.find((i) => items[i]!.textContent.trim().toLowerCase().startsWith(key.toLowerCase()));
}

function Item({ command, menu }: { readonly command: Command; readonly menu: OpenMenu }) {
  const refusal = command.refusal?.();
  const run = () => {
    if (refusal !== undefined) return;
    close(menu);
    void command.run();
  };
  return (
    <button type="button" role="menuitem" tabIndex={-1} className="bench-item" aria-disabled={refusal !== undefined} title={refusal} onClick={run}>
      <span>{command.labelNow?.() ?? command.label}</span>
      {command.keys?.[0] !== undefined && <kbd aria-hidden="true">{shownKeys(command.keys[0]).join(' ')}</kbd>}
    </button>
  );
}
