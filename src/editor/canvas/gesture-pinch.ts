import type { Gesture } from './gestures.ts';
import type { BenchView } from './view.ts';

type Place = readonly [number, number];

/** Two fingers: what lies between them stays between them. */
export function beginPinch(view: BenchView, area: HTMLElement, one: PointerEvent, other: PointerEvent): Gesture {
  const { left, top } = area.getBoundingClientRect();
  const placeOf = ({ clientX, clientY }: PointerEvent): Place => [clientX - left, clientY - top];
  const places = new Map([[one.pointerId, placeOf(one)], [other.pointerId, placeOf(other)]]);
  const k = view.zoom;
  const [from, wide] = between(places);
  const held: Place = [(from[0] - view.origin.x) / k, (from[1] - view.origin.y) / k];
  return {
    move: (event) => {
      places.set(event.pointerId, placeOf(event));
      const [now, width] = between(places);
      const zoom = view.limited((k * width) / wide);
      view.show(now[0] - held[0] * zoom, now[1] - held[1] * zoom, zoom);
    },
    end: () => undefined,
    cancel: () => undefined,
  };
}

/** The middle between two fingers, and how far they are apart (at least 1 px). */
function between(places: ReadonlyMap<number, Place>): readonly [Place, number] {
  const [[ax, ay], [bx, by]] = [...places.values()] as unknown as readonly [Place, Place];
  return [[(ax + bx) / 2, (ay + by) / 2], Math.max(1, Math.hypot(bx - ax, by - ay))];
}
