import { type ReactNode, useEffectEvent, useId, useLayoutEffect, useRef } from 'react';

interface DialogProps {
  readonly title: string;
  /** Called for Escape and the close button; whoever shows the dialog takes it away then. */
  readonly onClose: () => void;
  /** Room for tables and lists. */
  readonly wide?: boolean;
  readonly children: ReactNode;
}

/**
 * A question or a list that wants an answer before anything else. It is open while it is there. Focus goes to the
 * element marked `data-first`, else to the close button, and back to where it came from when the dialog goes.
 */
export function Dialog({ title, onClose, wide = false, children }: DialogProps) {
  const name = useId();
  const box = useRef<HTMLDialogElement>(null);
  useOpen(box, onClose);
  return (
    <dialog ref={box} className={wide ? 'dialog dialog-wide' : 'dialog'} aria-labelledby={name}>
      <div className="dialog-head">
        <h2 id={name}>{title}</h2>
        <button type="button" className="button" onClick={onClose}>Close</button>
      </div>
      <div className="dialog-body">{children}</div>
    </dialog>
  );
}

type Box = { readonly current: HTMLDialogElement | null };

/**
 * Closing before the element leaves lets the browser give the focus back; what it misses is given back by hand. Escape asks
 * to close; a browser may close at once when asked twice: then the state must follow.
 */
function useOpen(box: Box, onClose: () => void): void {
  const close = useEffectEvent(onClose);
  useLayoutEffect(() => {
    const dialog = box.current!;
    const before = document.activeElement;
    const gone = new AbortController();
    dialog.addEventListener('cancel', (event) => {
      if (event.target !== dialog) return;
      event.preventDefault();
      close();
    }, gone);
    dialog.addEventListener('close', (event) => {
      if (event.target === dialog && !dialog.open) close();
    }, gone);
    dialog.showModal();
    dialog.querySelector<HTMLElement>('[data-first]')?.focus();
    return () => {
      gone.abort();
      dialog.close();
      if (before instanceof HTMLElement && before.isConnected && document.activeElement !== before) before.focus();
    };
  }, [box]);
}
