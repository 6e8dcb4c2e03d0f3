import { type Box, overlap } from '../model/boxes.ts';
import { editor } from '../state/editor.ts';
import { currentGraph } from './follow.ts';
import { lie } from './lie.ts';
import { seenBox, viewport } from './state.ts';

/** Nodes whose cards are within a frame; of a folded group the last member, whose picture it shows. */
function idsSeen(boxes: ReadonlyMap<string, Box>, frame: Box): readonly string[] {
  const { cards } = currentGraph();
  return [...boxes].flatMap(([id, box]) => (overlap(box, frame) ? cards.get(id)?.members.at(-1) ?? [] : []));
}

/** Keeps the state's `seen` equal to the cards in view, at most once a frame; returns what ends that. */
export function watchSeen(): () => void {
  let frame = 0;
  const look = () => {
    frame = 0;
    const seen = idsSeen(lie.getState().boxes, seenBox(viewport.getState()));
    const before = editor.getState().seen;
    if (seen.length !== before.length || seen.some((id, i) => id !== before[i])) editor.setState({ seen });
  };
  const soon = () => {
    if (frame === 0) frame = requestAnimationFrame(look);
  };
  const ends = [viewport.subscribe(soon), lie.subscribe(soon)];
  soon();
  return () => {
    cancelAnimationFrame(frame);
    for (const end of ends) end();
  };
}
