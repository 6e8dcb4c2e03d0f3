import type { Gesture } from './gestures.ts';
import type { BenchView } from './view.ts';

/** The bench follows the pointer. */
export function beginPan(view: BenchView, start: PointerEvent): Gesture {
  const { x, y } = view.origin;
  return {
    move: ({ clientX, clientY }) => view.panTo(x + clientX - start.clientX, y + clientY - start.clientY),
    end: () => undefined,
    cancel: () => view.panTo(x, y),
  };
}
