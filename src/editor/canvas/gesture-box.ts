import { editor } from '../state/editor.ts';
import { chooseCards } from './actions.ts';
import { type Box, overlap } from '../model/boxes.ts';
import type { Gesture } from './gestures.ts';
import { lie } from './lie.ts';
import { bench } from './state.ts';
import type { BenchView } from './view.ts';

/** A frame drawn on the empty bench adds the cards it touches to what is chosen. */
export function beginBox(view: BenchView, start: PointerEvent): Gesture {
  const from = view.spotAt(start.clientX, start.clientY);
  const before = editor.getState().chosen;
  const boxTo = ({ clientX, clientY }: PointerEvent): Box => {
    const [x, y] = view.spotAt(clientX, clientY);
    return { x: Math.min(x, from[0]), y: Math.min(y, from[1]), width: Math.abs(x - from[0]), height: Math.abs(y - from[1]) };
  };
  return {
    move: (event) => bench.setState({ choosing: boxTo(event) }),
    end: (event, moved) => {
      bench.setState({ choosing: undefined });
      if (moved) chooseCards([...new Set([...before, ...touched(boxTo(event))])]);
    },
    cancel: () => bench.setState({ choosing: undefined }),
  };
}

const touched = (frame: Box): readonly string[] => [...lie.getState().boxes].flatMap(([id, box]) => (overlap(box, frame) ? [id] : []));
