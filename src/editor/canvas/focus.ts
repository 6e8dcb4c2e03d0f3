import { bench } from './state.ts';
import { bringIntoView } from './zoom.ts';

/** The card's element on the page. */
export const cardElement = (id: string): HTMLElement | undefined =>
  [...document.querySelectorAll<HTMLElement>('.bench-card')].find(({ dataset }) => dataset['node'] === id);

/** Puts the focus on a card and brings it into view; a card that is not built yet gets it once it stands. */
export function focusCard(id: string): void {
  const element = cardElement(id);
  bench.setState({ focused: id, wantsFocus: element === undefined ? id : undefined });
  bringIntoView(id);
  element?.focus({ preventScroll: true });
}

/** Puts the focus into the opened card's form, on its first field. */
export function focusInside(id: string): void {
  const inside = cardElement(id)?.querySelector('.bench-inside');
  const field = inside?.querySelector<HTMLElement>('input:not([type=hidden], :disabled), select, textarea') ?? inside?.querySelector<HTMLElement>('button');
  field?.focus({ preventScroll: true });
}
