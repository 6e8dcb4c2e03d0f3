// @vitest-environment happy-dom
import { act, cleanup, fireEvent, render, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Checks } from '../../../src/editor/checks/Checks.tsx';
import { INITIAL_LAYOUT, layout } from '../../../src/editor/app/layout.ts';
import { historyOf } from '../../../src/editor/model/history.ts';
import { editor, initialState } from '../../../src/editor/state/editor.ts';
import { violations } from '../../support/axe.ts';
import { DOCUMENT, SHAPES, TIGHT, WRONG, check, looked } from './example.ts';

const put = (checks: Parameters<typeof looked>[0]) => {
  const { outcome, reports } = looked(checks);
  editor.setState({ outcome, reports });
};
beforeEach(() => { editor.setState({ ...initialState, shapes: SHAPES, history: historyOf(DOCUMENT) }); });
afterEach(() => {
  cleanup();
  vi.useRealTimers();
  layout.setState(INITIAL_LAYOUT);
});

describe('the list of checks', () => {
  it('is headed by what there is to look at and lists the gravest first, each with sign and word', () => {
    put({ checks: [check({}), TIGHT, WRONG] });
    render(<Checks />);
    expect(screen.getByRole('heading').textContent).toBe('To look at: 1 failed, 1 caution, 1 in order');
    const lines = within(screen.getAllByRole('list')[0]!).getAllByRole('listitem').map(({ textContent }) => textContent);
    expect(lines[0]).toMatch(/^×Failed: Wrong cut4 mm2, at most 0 mm2\. Use a thinner cutter\.at x 1, y 2 mm · Emit program$/);
    expect(lines[1]).toContain('!Caution: Tightest bend');
    expect(lines[2]).toContain('✓In order: Tightest bend');
  });

  it('leads to the place on the sheet, on the whole sign, whatever was shown', () => {
    put({ checks: [TIGHT] });
    editor.setState({ shown: 'emit' });
    layout.setState({ rooms: 'bench' });
    render(<Checks />);
    fireEvent.click(screen.getByRole('button', { name: /Tightest bend/ }));
    expect(editor.getState()).toMatchObject({ shown: undefined, spot: { at: [412.345, -0.01], status: 'caution', node: 'groove' } });
    expect(layout.getState().rooms).toBe('both');
    expect(screen.getByRole('button', { name: /Tightest bend/ }).getAttribute('aria-pressed')).toBe('true');
  });

  it('leads to the card it came from', () => {
    put({ checks: [WRONG] });
    layout.setState({ rooms: 'sheet' });
    render(<Checks />);
    fireEvent.click(screen.getByRole('button', { name: 'Emit program' }));
    expect([editor.getState().chosen, layout.getState().rooms]).toEqual([['emit'], 'both']);
  });

  it('reads out a change of the gravest status, and nothing when only figures change', () => {
    put({ checks: [check({})] });
    render(<Checks />);
    const live = screen.getAllByRole('status').at(-1)!;
    expect(live.textContent).toBe('All checks are in order.');
    act(() => put({ checks: [check({}), TIGHT] }));
    const said = live.textContent;
    expect(said).toContain('caution');
    act(() => put({ checks: [check({}), { ...TIGHT, value: 20 }, TIGHT] }));
    expect(live.textContent).toBe(said);
  });

  it('says on an empty page what comes here', () => {
    editor.setState(initialState);
    render(<Checks />);
    expect(screen.getByText(/^Here comes what to look at/)).toBeTruthy();
  });

  it('folds the figures of the job', () => {
    put({});
    render(<Checks />);
    expect(screen.getByText('Figures of the job (2)').closest('details')!.open).toBe(false);
    expect(screen.getByText('12.5 m')).toBeTruthy();
  });

  it('has nothing an accessibility check objects to', async () => {
    put({ checks: [check({}), TIGHT, WRONG, check({ says: 'All straight.' })] });
    const { container } = render(<Checks />);
    expect(await violations(container)).toEqual([]);
  });
});

describe('progress', () => {
  const computing = { revision: 1, state: 'computing' as const, node: 'groove', done: 0.42, milliseconds: 900 };

  it('is told only of what takes long, with the step, how far, and a way to stop', () => {
    vi.useFakeTimers();
    editor.setState({ running: computing });
    render(<Checks />);
    act(() => { vi.advanceTimersByTime(260); });
    expect(screen.queryByRole('progressbar')).toBeNull();
    act(() => { vi.advanceTimersByTime(800); });
    expect(screen.getByRole('progressbar', { name: 'Computing Groove' }).getAttribute('value')).toBe('42');
    expect(screen.getByText(/42 % · 1\.0 s/)).toBeTruthy();
    expect(screen.getByRole('button', { name: 'Stop' })).toBeTruthy();
  });

  it('that was stopped can be taken up again', () => {
    editor.setState({ running: { ...computing, state: 'cancelled' } });
    render(<Checks />);
    expect(screen.getByRole('button', { name: 'Compute again' })).toBeTruthy();
  });
});
