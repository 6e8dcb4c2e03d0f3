import type { BenchView } from './view.ts';
import { beginBox } from './gesture-box.ts';
import { beginDrag } from './gesture-drag.ts';
import { beginPan } from './gesture-pan.ts';
import { beginPinch } from './gesture-pinch.ts';
import { beginLoosen, beginPull, endOfKey } from './gesture-wire.ts';
import { chooseCards } from './actions.ts';
import { askAt } from './press.ts';
import { bench } from './state.ts';

/** What follows a pointer from press to release. */
export interface Gesture {
  readonly move: (event: PointerEvent) => void;
  /** The pointer was lifted; `moved` says whether it had gone anywhere. */
  readonly end: (event: PointerEvent, moved: boolean) => void;
  /** The browser or another finger took the gesture away: nothing is kept of it. */
  readonly cancel: () => void;
}

/** A pointer that moves less than this, in pixels, only presses. */
const STILL = 4;

/** Milliseconds after which a finger held still asks for the menu. */
const LONG_PRESS = 550;

interface Track {
  readonly gesture: Gesture;
  readonly start: PointerEvent;
  moved: boolean;
}

/** Listens to mouse, pen and fingers on the bench; returns what ends that. */
export function watchGestures(area: HTMLElement, view: BenchView): () => void {
  const watch = new Watch(area, view);
  const scroll = () => area.scrollTo(0, 0);
  const wheel = (event: WheelEvent) => turnWheel(event, area, view);
  area.addEventListener('pointerdown', watch.down);
  area.addEventListener('scroll', scroll);
  area.addEventListener('wheel', wheel, { passive: false });
  addEventListener('pointermove', watch.move);
  addEventListener('pointerup', watch.up);
  addEventListener('pointercancel', watch.lost);
  addEventListener('keydown', watch.key);
  addEventListener('keyup', watch.key);
  return () => {
    removeEventListener('keydown', watch.key);
    removeEventListener('keyup', watch.key);
    area.removeEventListener('pointerdown', watch.down);
    area.removeEventListener('scroll', scroll);
    area.removeEventListener('wheel', wheel);
    removeEventListener('pointermove', watch.move);
    removeEventListener('pointerup', watch.up);
    removeEventListener('pointercancel', watch.lost);
  };
}

class Watch {
  readonly #area: HTMLElement;
  readonly #view: BenchView;
  readonly #tracks = new Map<number, Track>();
  /** Space is held down: dragging moves the bench, whatever lies below the pointer. */
  #space = false;
  #longPress: ReturnType<typeof setTimeout> | undefined;

  constructor(area: HTMLElement, view: BenchView) {
    this.#area = area;
    this.#view = view;
  }

  readonly key = (event: KeyboardEvent): void => {
    if (event.key === ' ') this.#space = event.type === 'keydown' && this.#area.closest('.bench')?.contains(event.target as Node) === true;
  };

  readonly down = (event: PointerEvent): void => {
    clearTimeout(this.#longPress);
    if (this.#tracks.size > 0 && event.pointerType === 'touch') {
      this.#pinch(event);
      return;
    }
    const gesture = this.#tracks.size > 0 ? undefined : this.#space ? beginPan(this.#view, event) : gestureAt(event, this.#view);
    if (gesture === undefined) return;
    this.#tracks.set(event.pointerId, { gesture, start: event, moved: false });
    if (event.pointerType !== 'mouse') this.#longPress = setTimeout(() => this.#pressedLong(event), LONG_PRESS);
  };

  /** A finger or pen held still asks for the menu. */
  #pressedLong(event: PointerEvent): void {
    const track = this.#tracks.get(event.pointerId);
    if (track === undefined || track.moved) return;
    track.gesture.cancel();
    this.#tracks.delete(event.pointerId);
    askAt(event, this.#area);
  }

  /** A second finger turns what the first began into moving and zooming the bench. */
  #pinch(event: PointerEvent): void {
    const [first] = this.#tracks.values();
    if (first === undefined || this.#tracks.size > 1) return;
    first.gesture.cancel();
    const gesture = beginPinch(this.#view, this.#area, first.start, event);
    this.#tracks.set(first.start.pointerId, { gesture, start: first.start, moved: true });
    this.#tracks.set(event.pointerId, { gesture, start: event, moved: true });
  }

  readonly move = (event: PointerEvent): void => {
    const track = this.#tracks.get(event.pointerId);
    if (track === undefined) return;
    track.moved ||= Math.hypot(event.clientX - track.start.clientX, event.clientY - track.start.clientY) >= STILL;
    if (!track.moved) return;
    clearTimeout(this.#longPress);
    track.gesture.move(event);
  };

  readonly up = (event: PointerEvent): void => {
    clearTimeout(this.#longPress);
    const track = this.#tracks.get(event.pointerId);
    this.#tracks.delete(event.pointerId);
    track?.gesture.end(event, track.moved);
  };

  readonly lost = (event: PointerEvent): void => {
    clearTimeout(this.#longPress);
    this.#tracks.get(event.pointerId)?.gesture.cancel();
    this.#tracks.delete(event.pointerId);
  };
}

/** Where a press on a form or a button means that, and no gesture of the bench. */
const OWN = 'input, textarea, select, summary, a, label, [contenteditable], .bench-inside, button:not(.bench-port)';

function gestureAt(event: PointerEvent, view: BenchView): Gesture | undefined {
  const target = event.target as Element;
  if (event.button === 1 || (event.button === 0 && event.altKey)) return beginPan(view, event);
  if (event.button !== 0 || target.closest(OWN) !== null) return undefined;
  const end = endOfKey(target.closest<HTMLElement>('[data-end]')?.dataset['end']);
  if (end !== undefined) return beginPull(view, end, event);
  const card = target.closest<HTMLElement>('.bench-card')?.dataset['node'];
  if (card !== undefined) return beginDrag(view, card, event);
  const wire = target.closest<SVGElement>('[data-wire]')?.dataset['wire'];
  if (wire !== undefined) return beginLoosen(view, wire, event);
  if (event.shiftKey || event.ctrlKey || event.metaKey) return beginBox(view, event);
  return onEmpty(beginPan(view, event));
}

/** Pressing the empty bench lets go of what is chosen. */
function onEmpty(gesture: Gesture): Gesture {
  return {
    ...gesture,
    end: (event, moved) => {
      gesture.end(event, moved);
      if (!moved) chooseCards([]);
      bench.setState({ menu: undefined });
    },
  };
}

/** Turning the wheel moves the bench, with Control (as pinching a trackpad reports itself) it zooms. */
function turnWheel(event: WheelEvent, area: HTMLElement, view: BenchView): void {
  if ((event.target as Element).closest('.bench-scrolls') !== null) return;
  event.preventDefault();
  const unit = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : event.deltaMode === WheelEvent.DOM_DELTA_PAGE ? 400 : 1;
  const { left, top } = area.getBoundingClientRect();
  if (event.ctrlKey || event.metaKey) view.zoomTo(view.zoom * Math.exp((-event.deltaY * unit) / 300), [event.clientX - left, event.clientY - top]);
  else if (event.shiftKey && event.deltaX === 0) view.panBy(-event.deltaY * unit, 0);
  else view.panBy(-event.deltaX * unit, -event.deltaY * unit);
}
