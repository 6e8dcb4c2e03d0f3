// @vitest-environment happy-dom
import { StrictMode } from 'react';
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { CommandList, cursorAfter } from '../../../src/editor/help/CommandList.tsx';
import { Help } from '../../../src/editor/help/Help.tsx';
import { findCommands } from '../../../src/editor/help/find-commands.ts';
import { help, openHelp } from '../../../src/editor/help/state.ts';
import { tourSteps } from '../../../src/editor/help/tour-steps.ts';
import { historyOf } from '../../../src/editor/model/history.ts';
import type { Command } from '../../../src/editor/state/commands.ts';
import { editor, initialState } from '../../../src/editor/state/editor.ts';
import { violations } from '../../support/axe.ts';
import { DOCUMENT, SHAPES } from '../checks/example.ts';
import { MENDER } from '../sheet/hand-sample.ts';

const ran: string[] = [];
const make = (id: string, label: string, group: Command['group'], more: Partial<Command> = {}): Command => ({ id, label, group, run: () => { ran.push(id); }, ...more });
const COMMANDS = [
  make('zoom', 'See the whole bench', 'View', { keys: ['F'] }),
  make('undo', 'Undo', 'Edit', { keys: ['Mod+Z'], labelNow: () => 'Undo: move 2 steps' }),
  make('cut', 'Cut', 'Edit', { refusal: () => 'Choose a card first.' }),
  make('save', 'Save', 'Document'),
];

beforeEach(() => {
  ran.length = 0;
  localStorage.clear();
  help.setState(help.getInitialState());
  editor.setState({ ...initialState, shapes: SHAPES, history: historyOf(DOCUMENT) });
});
afterEach(cleanup);

describe('searching commands', () => {
  const found = (search: string) => findCommands(COMMANDS, search).map(({ id }) => id);
  it('finds by every word of what they say now, under headings in a fixed order', () => {
    expect(found('')).toEqual(['save', 'undo', 'cut', 'zoom']);
    expect(found('steps  MOVE')).toEqual(['undo']);
    expect(found('edit')).toEqual(['undo', 'cut']);
    expect(found('laser')).toEqual([]);
  });

  it('moves its cursor within the list', () => {
    expect([cursorAfter('ArrowDown', 3, 4), cursorAfter('ArrowUp', 0, 4), cursorAfter('PageUp', 3, 4), cursorAfter('ArrowDown', -1, 0), cursorAfter('x', 1, 4)]).toEqual([3, 0, 0, 0, undefined]);
  });
});

describe('the list of commands', () => {
  const shown = () => {
    let closed = 0;
    const { container } = render(<CommandList commands={COMMANDS} onClose={() => { closed += 1; }} />);
    return { container, closed: () => closed, field: screen.getByRole('combobox') };
  };

  it('begins in its search and runs what the arrows come to', () => {
    const { field, closed } = shown();
    expect(document.activeElement).toBe(field);
    fireEvent.keyDown(field, { key: 'ArrowDown' });
    expect(document.getElementById(field.getAttribute('aria-activedescendant')!)?.textContent).toContain('Undo: move 2 steps');
    fireEvent.keyDown(field, { key: 'Enter' });
    expect([ran, closed()]).toEqual([['undo'], 1]);
  });

  it('says why something cannot be done now, and does not do it', () => {
    const { field, closed } = shown();
    fireEvent.change(field, { target: { value: 'cut' } });
    expect(screen.getByText('Not now: Choose a card first.')).toBeTruthy();
    fireEvent.keyDown(field, { key: 'Enter' });
    fireEvent.click(screen.getByRole('option'));
    expect([ran, closed()]).toEqual([[], 0]);
  });

  it('says what to do when nothing is found', () => {
    const { field } = shown();
    fireEvent.change(field, { target: { value: 'laser' } });
    expect(screen.getByText(/No command says “laser”/)).toBeTruthy();
    fireEvent.keyDown(field, { key: 'Enter' });
    expect(ran).toEqual([]);
  });

  it('has nothing an accessibility check objects to', async () => {
    shown();
    expect(await violations(document.body)).toEqual([]);
  });
});

describe('help', () => {
  it.each([['keys', 'Keys'], ['cautions', 'Before you cut']] as const)('shows %s as a dialog without faults', async (open, name) => {
    localStorage.setItem('groovewright.tour', 'seen');
    render(<Help />);
    act(() => openHelp(open));
    expect(screen.getByRole('dialog', { name })).toBeTruthy();
    expect(await violations(document.body)).toEqual([]);
    fireEvent.click(screen.getByRole('button', { name: 'Close' }));
    expect(screen.queryByRole('dialog')).toBeNull();
  });
});

describe('the tour', () => {
  it('begins by itself on the first visit, and never again', () => {
    render(<StrictMode><Help /></StrictMode>);
    expect(screen.getByRole('dialog', { name: 'The sheet' })).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Leave the tour' }));
    cleanup();
    render(<Help />);
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  it('does not begin where there is nothing to walk past', () => {
    editor.setState(initialState);
    render(<Help />);
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  it('goes through all its stops by its buttons, has the focus at each, and ends', () => {
    render(<Help />);
    const seen: string[] = [];
    for (;;) {
      const stop = screen.getByRole('dialog');
      expect(document.activeElement).toBe(stop);
      seen.push(stop.querySelector('h2')!.textContent);
      const next = screen.queryByRole('button', { name: 'Next' });
      if (next === null) break;
      fireEvent.click(next);
    }
    expect(seen).toEqual(tourSteps(DOCUMENT, SHAPES).map(({ title }) => title));
    fireEvent.click(screen.getByRole('button', { name: 'Back' }));
    expect(screen.getByRole('dialog').textContent).toContain(seen.at(-2));
    fireEvent.keyDown(screen.getByRole('dialog'), { key: 'Escape' });
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  it('opens the card it speaks of when asked', () => {
    render(<Help />);
    act(() => help.setState({ tour: 2 }));
    expect(screen.getByRole('dialog').textContent).toContain('the card “Groove”');
    fireEvent.click(screen.getByRole('button', { name: 'Open the card' }));
    fireEvent.click(screen.getByRole('button', { name: 'Open the card' }));
    expect(editor.getState()).toMatchObject({ opened: ['groove'], chosen: ['groove'] });
  });

  it('stops at work by hand where a step takes it, and nowhere else', () => {
    const titles = (nodes: typeof DOCUMENT.nodes) => tourSteps({ ...DOCUMENT, nodes }, new Map([...SHAPES, ['mender', MENDER]])).map(({ title }) => title);
    expect(titles(DOCUMENT.nodes)).not.toContain('Work by hand');
    expect(titles([...DOCUMENT.nodes, { id: 'mend', type: 'mender', position: [0, 0], params: {} }])).toContain('Work by hand');
  });

  it('stands without the places it points at, and without any step', async () => {
    expect(tourSteps(initialState.history.document, new Map())).toHaveLength(6);
    render(<Help />);
    expect(document.querySelector('.help-ring')).toBeNull();
    expect(await violations(document.body)).toEqual([]);
  });
});
