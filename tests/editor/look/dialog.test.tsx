// @vitest-environment happy-dom
import { StrictMode, useState } from 'react';
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Dialog } from '../../../src/editor/look/Dialog.tsx';
import { violations } from '../../support/axe.ts';

afterEach(cleanup);

function Page({ onClosed = () => {} }: { readonly onClosed?: () => void }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" onClick={() => setOpen(true)}>Ask</button>
      {open && <Dialog title="Which sheet?" onClose={() => { onClosed(); setOpen(false); }}><button type="button" data-first>The large one</button></Dialog>}
    </>
  );
}

function open(onClosed?: () => void): HTMLElement {
  render(<StrictMode><Page {...(onClosed && { onClosed })} /></StrictMode>);
  const opener = screen.getByText('Ask');
  opener.focus();
  fireEvent.click(opener);
  return opener;
}

describe('a dialog', () => {
  it('is named by its title and gives the focus to what comes first in it', () => {
    open();
    expect(screen.getByRole('dialog', { name: 'Which sheet?' }).hasAttribute('open')).toBe(true);
    expect(document.activeElement?.textContent).toBe('The large one');
  });

  it('closes by its button and gives the focus back', () => {
    const opener = open();
    fireEvent.click(screen.getByRole('button', { name: 'Close' }));
    expect(screen.queryByRole('dialog')).toBeNull();
    expect(document.activeElement).toBe(opener);
  });

  it('closes once for Escape, also when the browser closes it itself', () => {
    const closed = vi.fn();
    open(closed);
    expect(closed).not.toHaveBeenCalled();
    const cancel = new Event('cancel', { cancelable: true });
    fireEvent(screen.getByRole('dialog'), cancel);
    expect([closed.mock.calls.length, cancel.defaultPrevented]).toEqual([1, true]);
    fireEvent.click(screen.getByText('Ask'));
    (screen.getByRole('dialog') as HTMLDialogElement).close();
    expect(closed).toHaveBeenCalledTimes(2);
  });

  it('does not take the closing of something inside it for its own', () => {
    const closed = vi.fn();
    open(closed);
    fireEvent(screen.getByText('The large one'), new Event('close', { bubbles: true }));
    expect(closed).not.toHaveBeenCalled();
  });

  it('has nothing an accessibility check objects to, which objects to a button without a name', async () => {
    open();
    screen.getByText('The large one').textContent = '';
    expect(await violations(document.body)).toEqual([expect.stringMatching(/^button-name: /)]);
    cleanup();
    open();
    expect(await violations(document.body)).toEqual([]);
  });
});
