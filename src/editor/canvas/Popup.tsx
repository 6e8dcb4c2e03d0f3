import { type ReactNode, useEffect, useLayoutEffect, useRef } from 'react';

interface PopupProps {
  readonly label: string;
  readonly role?: 'dialog' | 'menu';
  /** Where it is asked for, in pixels of the bench. */
  readonly at: readonly [number, number];
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** Something small over the bench that goes away when one presses beside it, and lies whole within the window. */
export function Popup({ label, role = 'dialog', at: [x, y], onClose, children }: PopupProps) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => box.current === null ? undefined : keepInside(box.current, x, y), [x, y]);
  useEffect(() => {
    const press = (event: Event) => {
      if (!box.current?.contains(event.target as Node)) onClose();
    };
    addEventListener('pointerdown', press, true);
    return () => removeEventListener('pointerdown', press, true);
  }, [onClose]);
  return (
    <div
      ref={box} className="bench-popup bench-scrolls" role={role} aria-label={label}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        onClose();
      }}
    >
      {children}
    </div>
  );
}

const RIM = 8;

function keepInside(box: HTMLElement, x: number, y: number): void {
  const room = box.offsetParent ?? document.documentElement;
  const left = Math.max(RIM, Math.min(x, room.clientWidth - box.offsetWidth - RIM));
  const top = Math.max(RIM, Math.min(y, room.clientHeight - box.offsetHeight - RIM));
  box.style.transform = `translate(${left}px, ${top}px)`;
}
