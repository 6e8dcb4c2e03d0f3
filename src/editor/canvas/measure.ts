import { currentGraph } from './follow.ts';
import { layCards, layWires, takeHeight } from './lie.ts';
import { editor } from '../state/editor.ts';

const watched = new WeakMap<Element, { readonly id: string; readonly opened: boolean }>();
let observer: ResizeObserver | undefined;

/** Keeps the bench's idea of a card's height true; returns what ends that. Where the browser cannot tell sizes, likely ones stay. */
export function measureCard(element: HTMLElement, id: string, opened: boolean): () => void {
  if (typeof ResizeObserver === 'undefined') return () => undefined;
  observer ??= new ResizeObserver(takeSizes);
  watched.set(element, { id, opened });
  observer.observe(element);
  return () => observer?.unobserve(element);
}

function takeSizes(entries: readonly ResizeObserverEntry[]): void {
  const changed = entries.filter(({ target, borderBoxSize }) => {
    const card = watched.get(target);
    return card !== undefined && takeHeight(card.id, borderBoxSize[0]?.blockSize ?? 0, card.opened);
  });
  if (changed.length === 0) return;
  layCards(currentGraph(), editor.getState().opened);
  layWires(currentGraph());
}
