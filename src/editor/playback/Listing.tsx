import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { timeOfLine } from './jumps.ts';
import { momentAt } from './moments.ts';
import { type Change, type PlaybackState, change, paused, soughtTo, stepped, usePlayback } from './state.ts';
import { fileName, linesOf } from './words.ts';

/** Height of a line, pixels, as `playback.css` has it. */
const LINE = 24;
/** Lines drawn beyond those in view. */
const SPARE = 4;

const lineNow = (state: PlaybackState): number => momentAt(state.programs, state.seconds)?.line ?? 0;

function keyed(key: string): Change | undefined {
  if (key === 'ArrowDown') return stepped('move', 1);
  return key === 'ArrowUp' ? stepped('move', -1) : undefined;
}

/** The words of the program around the block under way; only the lines in view are drawn, as programs are long. */
export function Listing() {
  const id = useId();
  const programs = usePlayback((state) => state.programs);
  const number = usePlayback((state) => momentAt(state.programs, state.seconds)?.program ?? 0);
  const current = usePlayback(lineNow);
  const { box, top, height, onScroll } = useScrolling(current, number);
  const program = programs[number];
  if (program === undefined) return null;
  const lines = linesOf(program);
  const first = Math.max(0, Math.floor(top / LINE) - SPARE);
  const shown = lines.slice(first, Math.ceil((top + height) / LINE) + SPARE);
  const inView = current >= first && current < first + shown.length;
  const onKeyDown = (event: KeyboardEvent) => {
    const next = event.ctrlKey || event.metaKey || event.altKey ? undefined : keyed(event.key);
    if (next === undefined) return;
    event.preventDefault();
    change(next);
  };
  return (
    <div
      ref={box} className="playback-listing" role="listbox" tabIndex={0} aria-label={`Blocks of ${fileName(program.file)}`}
      {...(inView && { 'aria-activedescendant': `${id}${String(current)}` })} onScroll={onScroll} onKeyDown={onKeyDown}
    >
      <div className="playback-lines" role="presentation" style={{ blockSize: lines.length * LINE }}>
        {shown.map((text, index) => {
          const line = first + index;
          return (
            <div
              key={line} id={`${id}${String(line)}`} role="option" aria-selected={line === current} aria-setsize={lines.length} aria-posinset={line + 1}
              className="playback-line" style={{ insetBlockStart: line * LINE }} onClick={() => change((state) => soughtTo(timeOfLine(programs, number, line))(paused(state)))}
            >
              <span className="playback-mark" aria-hidden="true">{line === current ? '▸' : ''}</span>{text}
            </div>
          );
        })}
      </div>
    </div>
  );
}

/** Keeps the current line in the middle, as long as it moves; in between the person scrolls. */
function useScrolling(current: number, program: number) {
  const box = useRef<HTMLDivElement>(null);
  const [{ top, height }, setView] = useState({ top: 0, height: 5 * LINE });
  const read = () => { if (box.current) setView({ top: box.current.scrollTop, height: box.current.clientHeight }); };
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    element.scrollTop = Math.max(0, current * LINE - (element.clientHeight - LINE) / 2);
    setView({ top: element.scrollTop, height: element.clientHeight });
  }, [current, program]);
  return { box, top, height, onScroll: read };
}
