import type { MouseEvent } from 'react';
import { editor } from '../state/editor.ts';
import { chooseCards, chooseWire, toggleOpened } from './actions.ts';
import { currentView } from './current.ts';
import { bench } from './state.ts';

const IN_FORM = 'input, textarea, select, a, label, .bench-inside, .bench-popup, .bench-bar, .bench-wire-tools, .bench-frame-head, .bench-overview';

/** A double click opens a card, or asks for a step on the empty bench. */
export function doubleAt(event: MouseEvent): void {
  const target = event.target as Element;
  if (target.closest(`${IN_FORM}, button`) !== null) return;
  const id = target.closest<HTMLElement>('.bench-card')?.dataset['node'];
  if (id !== undefined) toggleOpened(id);
  else if (target.closest('[data-wire]') === null && target.closest('.bench-area') !== null) {
    const at = currentView()?.spotAt(event.clientX, event.clientY);
    if (at !== undefined) bench.setState({ adding: { at } });
  }
}

interface Asked {
  readonly clientX: number;
  readonly clientY: number;
  readonly target: EventTarget | null;
  readonly preventDefault: () => void;
}

/** The menu of what lies at a place of the window. Fields keep the browser's own. */
export function askAt(event: Asked, holder: HTMLElement): void {
  const target = event.target as Element;
  if (target.closest(IN_FORM) !== null || target.closest('.bench-area') === null) return;
  event.preventDefault();
  const { left, top } = holder.getBoundingClientRect();
  const at = [event.clientX - left, event.clientY - top] as const;
  const card = target.closest<HTMLElement>('.bench-card')?.dataset['node'];
  const wire = target.closest<SVGElement>('[data-wire]')?.dataset['wire'];
  if (card !== undefined) {
    if (!editor.getState().chosen.includes(card)) chooseCards([card]);
    bench.setState({ focused: card, menu: { on: 'card', id: card, at } });
  } else if (wire !== undefined) {
    chooseWire(wire);
    bench.setState({ menu: { on: 'wire', id: wire, at } });
  } else bench.setState({ menu: { on: 'bench', id: '', at } });
}
