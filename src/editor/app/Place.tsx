import type { ReactNode } from 'react';

interface PlaceProps {
  readonly id: 'sheet' | 'checks' | 'bench' | 'form';
  readonly name: string;
  readonly hidden?: boolean;
  readonly children: ReactNode;
}

/** A place of the window that its room fills. It can have the focus, so that a click anywhere in it tells where keys are meant to act. */
export function Place({ id, name, hidden = false, children }: PlaceProps) {
  return <div className={`app-place app-${id}`} id={id} tabIndex={-1} hidden={hidden} data-room={id} data-name={name}>{children}</div>;
}
