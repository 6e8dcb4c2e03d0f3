import type { Reading } from '../../values/picture.ts';
import { useEditor } from '../state/editor.ts';
import { doubtsAt, doubtsOf } from './doubts.ts';
import type { Alone } from './set-ups.ts';
import { useAlone } from './use-alone.ts';
import { signAt, signsOf } from './signs.ts';
import { frameOf, useSheet } from './store.ts';
import { measure, measureWords, plain } from './tape.ts';
import { decimalsAt } from './ticks.ts';
import { type Point, toScreen } from './view.ts';

/** Room beside the pointer, CSS pixels. */
const BESIDE = 16;
/** Room a read-out needs before the edge: nearer, it stands on the other side. */
const ROOM = { width: 240, height: 96 };

/** What is read at the pointer, beside it. */
export function Readout() {
  const state = useSheet((all) => all);
  const lines = useReadoutLines();
  const at = state.tape.to ?? state.cursor;
  if (lines.length === 0 || !at) return null;
  const place = toScreen(frameOf(state), at);
  return (
    <div className="sheet-readout" style={beside(place, state.size.width, state.size.height)} aria-hidden="true">
      {lines.map((line) => <p key={line}>{line}</p>)}
    </div>
  );
}

function beside({ x, y }: Point, width: number, height: number) {
  const right = x + BESIDE + ROOM.width > width;
  const below = y + BESIDE + ROOM.height > height;
  return {
    ...(right ? { right: width - x + BESIDE } : { left: x + BESIDE }),
    ...(below ? { bottom: height - y + BESIDE } : { top: y + BESIDE }),
  };
}

/** What there is to tell at the cursor, in lines: a check's sentence, the tape, what it holds on to, what lies there and what was measured. */
export function useReadoutLines(): readonly string[] {
  const { cursor, tape, snap, readings, under, view, size, tool, hidden } = useSheet((all) => all);
  const picture = useEditor((state) => state.picture);
  const signs = useEditorSigns(useAlone());
  const decimals = Math.max(2, decimalsAt(view.scale));
  const end = tape.to ?? (tool === 'tape' ? (snap?.at ?? cursor) : undefined);
  const frame = frameOf({ view, size });
  const sign = cursor && tool === 'look' ? signAt(signs, frame, toScreen(frame, cursor)) : undefined;
  const doubts = cursor && (tool === 'look' || tool === 'read') ? doubtsAt(doubtsOf(picture, hidden), frame, toScreen(frame, cursor)) : [];
  return [
    ...(sign ? [sign.says] : []),
    ...new Set(doubts.map(({ says }) => `? ${says}`)),
    ...(tape.from && end ? measureWords(measure(tape.from, end), decimals) : []),
    ...(snap && !tape.to ? [snap.says] : []),
    ...(under !== undefined ? [under] : []),
    ...readings.map(readingWords),
  ];
}

function useEditorSigns(alone: Alone | undefined) {
  const outcome = useEditor((state) => state.outcome);
  const picture = useEditor((state) => state.picture);
  const history = useEditor((state) => state.history);
  const shapes = useEditor((state) => state.shapes);
  return signsOf({ outcome, picture, history, shapes }, alone);
}

/** "width here 10.00 mm": as many digits as one would read off a rule. */
export function readingWords({ says, value, unit }: Reading): string {
  if (!Number.isFinite(value)) return `${says}: no limit`;
  const decimals = unit === 'count' ? 0 : Math.abs(value) < 20 ? 2 : Math.abs(value) < 100 ? 1 : 0;
  return `${says} ${plain(value, decimals)}${unit === '' || unit === 'count' ? '' : ` ${unit}`}`;
}
