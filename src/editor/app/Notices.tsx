import { useEffect, useState } from 'react';
import { type Notice, dismiss, useEditor } from '../state/editor.ts';
import { STATUS } from '../checks/status.ts';

/** How long what was done stays to be read, in milliseconds. */
export const DONE_STAYS = 6000;
/** Older notices than these wait behind a line that counts them. */
const MOST_SHOWN = 4;

/** What the page tells without being asked. Both lists are always there, so that screen readers hear what is put into them. */
export function Notices() {
  const notices = useEditor((state) => state.notices);
  const shown = notices.slice(-MOST_SHOWN);
  const waiting = notices.length - shown.length;
  const list = (failed: boolean) => shown.filter(({ kind }) => (kind === 'failed') === failed).map((notice) => <Line key={notice.id} notice={notice} />);
  return (
    <div className="app-notices no-print">
      <div className="app-notice-list" role="status" aria-label="What was done">{list(false)}</div>
      <div className="app-notice-list" role="alert" aria-label="What went wrong">{list(true)}</div>
      {waiting > 0 && (
        <p className="app-notice">
          <span>{waiting} older {waiting === 1 ? 'notice' : 'notices'}</span>
          <button type="button" className="button-quiet" onClick={() => notices.forEach(({ id }) => dismiss(id))}>Dismiss all</button>
        </p>
      )}
    </div>
  );
}

const SIGN = { done: STATUS.pass, caution: STATUS.caution, failed: STATUS.fail };

function Line({ notice: { id, kind, says, action } }: { readonly notice: Notice }) {
  const [held, setHeld] = useState(false);
  useFading(kind === 'done' && !held, id);
  const { sign, look } = SIGN[kind];
  const hold = { onPointerEnter: () => setHeld(true), onPointerLeave: () => setHeld(false), onFocus: () => setHeld(true), onBlur: () => setHeld(false) };
  return (
    <div className="app-notice" data-kind={kind} {...hold}>
      <span className={look} aria-hidden="true">{sign}</span>
      <span className="app-notice-says">{kind === 'done' ? says : <><span className="visually-hidden">{SIGN[kind].word}: </span>{says}</>}</span>
      {action && <button type="button" className="button" onClick={() => { dismiss(id); action.run(); }}>{action.label}</button>}
      <button type="button" className="button-quiet" aria-label={`Dismiss: ${says}`} onClick={() => dismiss(id)}>Dismiss</button>
    </div>
  );
}

/** Takes a notice away after a while; the time begins anew when it was held. */
function useFading(fades: boolean, id: number): void {
  useEffect(() => {
    if (!fades) return undefined;
    const timer = setTimeout(() => dismiss(id), DONE_STAYS);
    return () => clearTimeout(timer);
  }, [fades, id]);
}
