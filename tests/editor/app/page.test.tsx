// @vitest-environment happy-dom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { DONE_STAYS, Notices } from '../../../src/editor/app/Notices.tsx';
import { RoomBoundary } from '../../../src/editor/app/RoomBoundary.tsx';
import { RoomsDivider } from '../../../src/editor/app/dividers.tsx';
import { INITIAL_LAYOUT, SPLIT, layout } from '../../../src/editor/app/layout.ts';
import { useKeys } from '../../../src/editor/app/use-keys.ts';
import { editor, initialState, notify } from '../../../src/editor/state/editor.ts';
import { violations } from '../../support/axe.ts';
import type { Command } from '../../../src/editor/state/commands.ts';

afterEach(() => {
  cleanup();
  vi.useRealTimers();
  editor.setState(initialState);
  layout.setState(INITIAL_LAYOUT);
});

describe('the line between sheet and bench', () => {
  it('tells its value and moves by keys and by double click', () => {
    render(<RoomsDivider />);
    const line = screen.getByRole('separator', { name: 'Height of the sheet' });
    expect(line.getAttribute('aria-valuenow')).toBe('55');
    fireEvent.keyDown(line, { key: 'ArrowUp' });
    expect(layout.getState().split).toBe(50);
    expect(line.getAttribute('aria-valuetext')).toBe('50 percent');
    fireEvent.keyDown(line, { key: 'End' });
    expect(layout.getState().split).toBe(SPLIT.max);
    fireEvent.doubleClick(line);
    expect(layout.getState().split).toBe(50);
  });

  it('follows the pointer while it is held, and only then', () => {
    const { container } = render(<RoomsDivider />);
    container.getBoundingClientRect = () => ({ top: 100, height: 800 }) as DOMRect;
    const line = screen.getByRole('separator');
    line.setPointerCapture = () => {};
    fireEvent.pointerMove(line, { clientY: 300 });
    expect(layout.getState().split).toBe(55);
    fireEvent.pointerDown(line, { button: 0, pointerId: 1 });
    fireEvent.pointerMove(line, { clientY: 340 });
    expect(layout.getState().split).toBe(30);
    fireEvent.pointerUp(line);
    fireEvent.pointerMove(line, { clientY: 700 });
    expect(layout.getState().split).toBe(30);
  });
});

describe('notices', () => {
  const tell = (kind: 'done' | 'caution' | 'failed', says: string) => act(() => notify({ kind, says }));

  it('of what was done go by themselves, not while they are pointed at; the others stay', () => {
    vi.useFakeTimers();
    render(<Notices />);
    tell('done', 'Saved.');
    tell('failed', 'The disk is full.');
    fireEvent.pointerEnter(screen.getByText('Saved.').closest('.app-notice')!);
    act(() => { vi.advanceTimersByTime(2 * DONE_STAYS); });
    expect(screen.getByText('Saved.')).toBeTruthy();
    fireEvent.pointerLeave(screen.getByText('Saved.').closest('.app-notice')!);
    act(() => { vi.advanceTimersByTime(DONE_STAYS); });
    expect(screen.queryByText('Saved.')).toBeNull();
    expect(screen.getByText('The disk is full.')).toBeTruthy();
  });

  it('are told as status or as alert, in places that are there before them', () => {
    render(<Notices />);
    expect([screen.getByRole('status').textContent, screen.getByRole('alert').textContent]).toEqual(['', '']);
    tell('caution', 'Old recipe.');
    tell('failed', 'No room.');
    expect(screen.getByRole('status').textContent).toContain('Old recipe.');
    expect(screen.getByRole('alert').textContent).toContain('Failed: No room.');
  });

  it('offer what can be done and go with it', () => {
    let undone = 0;
    render(<Notices />);
    act(() => notify({ kind: 'done', says: 'Removed 3 steps.', action: { label: 'Undo', run: () => { undone += 1; } } }));
    fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
    expect([undone, editor.getState().notices]).toEqual([1, []]);
  });

  it('do not pile up: older ones wait behind a count', () => {
    render(<Notices />);
    for (let at = 0; at < 7; at += 1) tell('caution', `Caution ${String(at)}.`);
    expect(screen.getByText('3 older notices')).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Dismiss all' }));
    expect(editor.getState().notices).toEqual([]);
  });
});

describe('notices and dividers', () => {
  it('have nothing an accessibility check objects to', async () => {
    render(<><Notices /><RoomsDivider /><div id="sheet" /></>);
    act(() => {
      for (const kind of ['done', 'caution', 'failed'] as const) notify({ kind, says: `It is ${kind}.`, action: { label: 'Show', run: () => {} } });
    });
    expect(await violations(document.body)).toEqual([]);
  });
});

describe('a room that breaks', () => {
  it('says so alone, and comes back when it is tried again', () => {
    vi.spyOn(console, 'error').mockImplementation(() => {});
    let broken = true;
    function Room() {
      if (broken) throw new Error('no canvas');
      return <p>drawn</p>;
    }
    render(<><RoomBoundary name="The sheet"><Room /></RoomBoundary><p>the bench</p></>);
    expect(screen.getByRole('alert').textContent).toContain('The sheet stopped working: no canvas');
    expect(screen.getByText('the bench')).toBeTruthy();
    broken = false;
    fireEvent.click(screen.getByRole('button', { name: 'Try again' }));
    expect(screen.getByText('drawn')).toBeTruthy();
    vi.restoreAllMocks();
  });
});

describe('listening for keys', () => {
  const runs: string[] = [];
  const commands: readonly Command[] = [{ id: 'undo', label: 'Undo', group: 'Edit', keys: ['Mod+Z'], run: () => { runs.push('undo'); } }];
  function Page({ open = false }) {
    useKeys(commands);
    return <>{open && <dialog open />}<button type="button">here</button></>;
  }

  it('runs the command, unless a dialog is open or someone has handled the key', () => {
    const { rerender } = render(<Page />);
    const key = { key: 'z', ctrlKey: true };
    expect(fireEvent.keyDown(screen.getByText('here'), key)).toBe(false);
    expect(runs).toEqual(['undo']);
    const handled = (event: Event) => event.preventDefault();
    document.body.addEventListener('keydown', handled);
    fireEvent.keyDown(screen.getByText('here'), key);
    document.body.removeEventListener('keydown', handled);
    rerender(<Page open />);
    fireEvent.keyDown(screen.getByText('here'), key);
    expect(runs).toEqual(['undo']);
  });
});
