import type { KeyboardEvent } from 'react';
import { alongWires, firstCard, lastCard, towards } from '../model/walk.ts';
import { type VisibleGraph, visibleGraph } from '../model/visible.ts';
import { editor, present } from '../state/editor.ts';
import { chooseCards, toggleChosen, toggleOpened } from './actions.ts';
import { cardElement, focusCard, focusInside } from './focus.ts';
import { lie } from './lie.ts';
import { bench } from './state.ts';

/** Keys on a card that has the focus. What has a command of its own is left to the page. */
export function pressOnCard(event: KeyboardEvent): void {
  const target = event.target as HTMLElement;
  const id = target.closest<HTMLElement>('.bench-card')?.dataset['node'];
  if (id === undefined || event.defaultPrevented) return;
  if (!target.classList.contains('bench-card')) {
    if (event.key === 'Escape') taken(event, () => focusCard(id));
    return;
  }
  if (event.altKey || event.ctrlKey || event.metaKey) return;
  const to = walkTo(event.key, id);
  if (to !== undefined) taken(event, () => goTo(to, event.shiftKey));
  else if (event.key === 'Enter') taken(event, () => enter(id));
  else if (event.key === ' ') taken(event, () => toggleChosen(id));
  else if (event.key === 'ContextMenu' || (event.key === 'F10' && event.shiftKey)) taken(event, () => openMenuOf(id));
  else if (event.key === 'Escape' && editor.getState().opened.includes(id)) taken(event, () => toggleOpened(id));
}

function taken(event: KeyboardEvent, act: () => void): void {
  event.preventDefault();
  event.stopPropagation();
  act();
}

/** The card a key leads to from another: along wires to the left and right, among those side by side up and down. */
function walkTo(key: string, id: string): string | undefined {
  const graph: VisibleGraph = visibleGraph(editor.getState().shapes, present());
  switch (key) {
    case 'ArrowRight': return nearestRow(alongWires(graph, id), id) ?? towards(lie.getState().boxes, id, 'right') ?? id;
    case 'ArrowLeft': return nearestRow(alongWires(graph, id, true), id) ?? towards(lie.getState().boxes, id, 'left') ?? id;
    case 'ArrowUp': return towards(lie.getState().boxes, id, 'up') ?? id;
    case 'ArrowDown': return towards(lie.getState().boxes, id, 'down') ?? id;
    case 'Home': return firstCard(graph);
    case 'End': return lastCard(graph);
    default: return undefined;
  }
}

/** Of several cards at the end of wires the nearest, so that going on and back is the same way wherever it can be. */
function nearestRow(ids: readonly string[], from: string): string | undefined {
  const { boxes } = lie.getState();
  const own = boxes.get(from);
  const far = (id: string) => {
    const box = boxes.get(id);
    return own === undefined || box === undefined ? Infinity : Math.abs(box.x - own.x) + 2 * Math.abs(box.y - own.y);
  };
  return [...ids].sort((a, b) => far(a) - far(b))[0];
}

/** Walking chooses, so that the sheet shows what one stands on; with Shift what was chosen stays chosen. */
function goTo(id: string, adds: boolean): void {
  const { chosen } = editor.getState();
  chooseCards(adds ? [...chosen.filter((other) => other !== id), id] : [id]);
  focusCard(id);
}

function enter(id: string): void {
  if (!editor.getState().opened.includes(id)) toggleOpened(id);
  chooseCards([id]);
  // The form is there once React has drawn the opened card.
  setTimeout(() => focusInside(id));
}

/** Opens the menu of a card below its title. */
function openMenuOf(id: string): void {
  const element = cardElement(id);
  const room = element?.closest('.bench')?.getBoundingClientRect();
  const box = element?.getBoundingClientRect();
  if (room === undefined || box === undefined) return;
  if (!editor.getState().chosen.includes(id)) chooseCards([id]);
  bench.setState({ menu: { on: 'card', id, at: [box.left - room.left + 24, box.top - room.top + 36] } });
}
