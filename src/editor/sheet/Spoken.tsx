import { useEditor } from '../state/editor.ts';
import { useReadoutLines } from './Readout.tsx';
import { placeOf } from './grips.ts';
import { handlesOf, placesOfHandle } from './handles.ts';
import { nextWords, targetWords } from './hand/hand-words.ts';
import { useWay } from './hand/use-ways.ts';
import { type Grip, useSheet } from './store.ts';
import { subjectOf } from './subject.ts';
import { plain } from './tape.ts';
import type { Point } from './view.ts';

/** Tells those who do not see the sheet what the keys do: where the cursor is and what is read there, and what is held. */
export function Spoken() {
  const byKeys = useSheet((state) => state.byKeys);
  const cursor = useSheet((state) => state.cursor);
  const lines = useReadoutLines();
  const held = useHeldWords();
  const hand = useHandWords();
  const words = byKeys && cursor && hand === '' ? [placeWords(cursor), ...lines].join('. ') : hand || held;
  return <p className="visually-hidden" role="status">{words}</p>;
}

const placeWords = ({ x, y }: Point): string => `x ${plain(x, 2)}, y ${plain(y, 2)} mm`;

/** What was done last by hand; else what keys stand on or drag, and what comes next. */
function useHandWords(): string {
  const way = useWay();
  const { picked, target, pull, told } = useSheet((state) => state);
  if (!way) return '';
  if (pull) return `Dragged to ${placeWords(pull.to)}. Enter lets go, Escape takes it back.`;
  if (target) return targetWords(way, target);
  return told !== '' ? told : picked.length > 0 ? nextWords(way, picked) : '';
}

function useHeldWords(): string {
  const grip = useSheet((state) => state.grip);
  const history = useEditor((state) => state.history);
  const shapes = useEditor((state) => state.shapes);
  const picture = useEditor((state) => state.picture);
  const subject = subjectOf({ history, shapes, picture });
  return grip && subject ? heldWords(subject, grip) : '';
}

function heldWords(subject: NonNullable<ReturnType<typeof subjectOf>>, grip: Grip): string {
  const handle = handlesOf(subject)[grip.handle];
  if (!handle) return '';
  if (grip.place === undefined) return `All of it is held. ${handle.doc}`;
  const at = placeOf(subject, grip);
  return at ? `Place ${grip.place + 1} of ${placesOfHandle(handle, subject).length} is held: ${placeWords(at)}` : '';
}
