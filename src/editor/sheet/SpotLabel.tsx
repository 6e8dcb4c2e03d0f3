import { useEffect } from 'react';
import { editor, useEditor } from '../state/editor.ts';
import { spotHere } from './signs.ts';
import { LABEL, labelPlace } from './spot-label.ts';
import { frameOf, useSheet } from './store.ts';

const CLASSES = { pass: '', caution: 'is-caution', fail: 'is-failed' } as const;
const SIGNS = { pass: '✓', caution: '!', fail: '✕' } as const;

/** The sentence about the place one was sent to, at the end of the line from its ring. Escape clears it wherever the focus is. */
export function SpotLabel() {
  const spot = useEditor(spotHere);
  const view = useSheet((state) => state.view);
  const size = useSheet((state) => state.size);
  useEffect(() => (spot ? clearOnEscape() : undefined), [spot]);
  if (!spot) return null;
  const { left, top, above, leftward } = labelPlace(frameOf({ view, size }), spot.at);
  return (
    <div className="sheet-spot" data-above={above} data-leftward={leftward} style={{ left, top, width: LABEL.width, height: LABEL.height }}>
      <p className={CLASSES[spot.status]} role="status"><b aria-hidden="true">{SIGNS[spot.status]}</b> {spot.says}</p>
    </div>
  );
}

function clearOnEscape(): () => void {
  const clear = (event: KeyboardEvent) => {
    if (event.key === 'Escape' && !event.defaultPrevented) editor.setState({ spot: undefined });
  };
  addEventListener('keydown', clear);
  return () => removeEventListener('keydown', clear);
}
