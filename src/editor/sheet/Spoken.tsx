import { useEditor } from '../state/editor.ts';
import { useReadoutLines } from './Readout.tsx';
import { placeOf } from './grips.ts';
import { axisOf, handlesOf, placesOfHandle } from './handles.ts';
import { nextWords, targetWords } from './hand/hand-words.ts';
import { useWay } from './hand/use-ways.ts';
import { read } from './set-ups.ts';
import { type Grip, useSheet } from './store.ts';
import { subjectOf } from './subject.ts';
import { plain } from './tape.ts';
import { useAlone } from './use-alone.ts';
import type { Point } from './view.ts';

/** Tells those who do not see the sheet what the keys do: where the cursor is and what is read there, and what is held. */
export function Spoken() {
  const byKeys = useSheet((state) => state.byKeys);
  const cursor = useSheet((state) => state.cursor);
  const lines = useReadoutLines();
  const held = useHeldWords();
  const alone = useAlone();
  const hand = useHandWords();
  const words = byKeys && cursor && hand === '' ? [placeWords(read(cursor, alone)), ...lines].join('. ') : hand || held;
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
  const setUp = useSheet((state) => state.setUp);
  const subject = subjectOf({ history, shapes, picture }, setUp);
  return grip && subject ? heldWords(subject, grip) : '';
}

function heldWords(subject: NonNullable<ReturnType<typeof subjectOf>>, grip: Grip): string {
  const handle = handlesOf(subject)[grip.handle];
  if (!handle) return '';
  if (grip.place === undefined) return `All of it is held. ${handle.doc}`;
  const at = placeOf(subject, grip);
  if (!at) return '';
  const axis = axisOf(handle);
  const where = read(at, subject.alone);
  return `Place ${grip.place + 1} of ${placesOfHandle(handle, subject).length} is held: ${axis ? `${axis} ${plain(where[axis], 2)} mm` : placeWords(where)}`;
}
