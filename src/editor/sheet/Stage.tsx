import { type KeyboardEvent, useEffect, useRef } from 'react';
import { useEditor } from '../state/editor.ts';
import { Hint } from './Hint.tsx';
import { Readout } from './Readout.tsx';
import { Spoken } from './Spoken.tsx';
import { SpotLabel } from './SpotLabel.tsx';
import { setSize } from './camera.ts';
import { axisOf, handlesOf } from './handles.ts';
import { leaveKeys, pressKey, releaseKey } from './keys.ts';
import { paintSheet } from './painter.ts';
import { listenToPointers } from './pointer.ts';
import { useWays } from './hand/use-ways.ts';
import { useAlone } from './use-alone.ts';
import { useSheet } from './store.ts';
import { subject } from './subject.ts';
import { isStale, shownWords } from './title.ts';
import { pictureWords } from './words.ts';

/** The picture itself, with rulers, and what is done on it by pointer and keys. */
export function Stage() {
  const stage = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const tool = useSheet((state) => state.tool);
  const held = useHeld();
  const aimed = useSheet((state) => state.aimed?.kind);
  const worked = useWays().length > 0;
  const stale = useEditor(isStale);
  const alone = useAlone();
  const words = useEditor((state) => {
    const { title, says } = shownWords(state);
    return pictureWords(title, says, state.picture, alone);
  });
  useEffect(() => watchSize(stage.current!), []);
  useEffect(() => paintSheet(canvas.current!), []);
  useEffect(() => listenToPointers(canvas.current!), []);
  return (
    <div
      ref={stage} className="sheet-stage" tabIndex={0} role="application" aria-label="Picture of the sheet" aria-describedby="sheet-words"
      data-tool={tool} data-held={held} data-aimed={aimed} data-stale={stale} onKeyDown={onKeyDown} onKeyUp={releaseKey} onBlur={leaveKeys}
    >
      <canvas ref={canvas} role="img" aria-label={words} />
      <p id="sheet-words" className="visually-hidden">{words} Arrow keys move the view, plus and minus zoom, T measures, N takes hold of what can be moved.{worked && ' W changes how it is worked on by hand; Enter takes what N came to.'}</p>
      <SpotLabel />
      <Readout />
      <Hint />
      <Spoken />
    </div>
  );
}

/** Whether what lies under the pointer can be taken hold of; the axis, where it goes along one only. */
function useHeld(): boolean | 'x' | 'y' {
  const hovered = useSheet((state) => state.hovered);
  const shown = hovered && subject();
  const handle = shown && handlesOf(shown)[hovered.handle];
  return handle ? axisOf(handle) ?? true : hovered !== undefined;
}

function onKeyDown(event: KeyboardEvent): void {
  if (event.target !== event.currentTarget || !pressKey(event)) return;
  event.preventDefault();
  event.stopPropagation();
}

function watchSize(element: HTMLElement): () => void {
  const measure = () => setSize({ width: element.clientWidth, height: element.clientHeight });
  measure();
  const observer = new ResizeObserver(measure);
  observer.observe(element);
  return () => observer.disconnect();
}
