// @vitest-environment happy-dom
import { act, cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import axe from 'axe-core';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Sheet } from '../../../src/editor/sheet/Sheet.tsx';
import { sheet } from '../../../src/editor/sheet/store.ts';
import { editor } from '../../../src/editor/state/editor.ts';
import { HOLES_PICTURE, PINS_PICTURE, SET_UPS, showSample } from './samples.ts';

const asked = vi.hoisted(() => [] as string[]);
vi.mock('../../../src/editor/worker/client.ts', () => ({
  ask: (question: string) => {
    asked.push(question);
    return question === 'around' ? Promise.resolve([{ kind: 'supports', name: 'supports', items: [{ d: 'M800 0L800 500', setUps: [1] }] }]) : Promise.reject(new Error('no answer'));
  },
}));

beforeEach(() => {
  vi.stubGlobal('matchMedia', () => ({ matches: true, addEventListener: () => undefined, removeEventListener: () => undefined }));
  showSample(PINS_PICTURE);
  asked.length = 0;
});
afterEach(cleanup);

const choice = () => within(screen.getByRole('group', { name: 'Look at' }));

describe('the choice of set-ups', () => {
  it('is not offered where all is cut in one', () => {
    showSample(HOLES_PICTURE);
    render(<Sheet />);
    expect(screen.queryByRole('group', { name: 'Look at' })).toBeNull();
  });

  it('says which is looked at and how the sheet lies, and tells the place under the pointer in its programs’ coordinates', async () => {
    render(<Sheet />);
    expect(choice().getAllByRole('button').map(({ textContent }) => textContent)).toEqual(['All set-ups', 'Set-up 1', 'Set-up 2', 'Set-up 3']);
    expect(choice().getByRole('button', { pressed: true }).textContent).toBe('All set-ups');
    await userEvent.click(choice().getByRole('button', { name: 'Set-up 2' }));
    expect(choice().getByRole('button', { pressed: true }).textContent).toBe('Set-up 2');
    expect(screen.getByText('Set-up 2 as it lies on the machine. After set-up 1 the sheet is moved 300 mm left.').getAttribute('role')).toBe('status');
    expect(screen.getByRole('img', { name: /Set-up 2 alone\. After set-up 1 the sheet is moved 300 mm left\. Drawn: pins; passes\. Faint, of earlier set-ups: passes\. Faint beneath: strokes, 2/ })).toBeTruthy();
    act(() => sheet.setState({ cursor: { x: 400, y: 20 } }));
    expect(screen.getByText(/^program x 100\.00 y 20\.00 mm$/)).toBeTruthy();
  });

  it('brings what other steps have in the set-ups, and lists its layers', async () => {
    render(<Sheet />);
    expect(asked).not.toContain('around');
    await userEvent.click(choice().getByRole('button', { name: 'Set-up 2' }));
    expect(await screen.findByRole('checkbox', { name: 'supports' })).toBeTruthy();
    await userEvent.click(choice().getByRole('button', { name: 'Set-up 3' }));
    expect(screen.queryByRole('checkbox', { name: 'supports' })).toBeNull();
    await userEvent.click(choice().getByRole('button', { name: 'All set-ups' }));
    expect(sheet.getState().around).toEqual([]);
    expect(asked.filter((question) => question === 'around').length).toBe(1);
  });

  it('is a list where there are many', async () => {
    const list = Array.from({ length: 9 }, (_, i) => ({ ...SET_UPS.list[0]!, name: `set-up ${i + 1}` }));
    editor.setState({ picture: { ...PINS_PICTURE, setUps: { ...SET_UPS, list } } });
    render(<Sheet />);
    await userEvent.selectOptions(screen.getByRole('combobox', { name: 'Look at' }), 'Set-up 7');
    expect(sheet.getState().setUp).toBe(6);
    await userEvent.selectOptions(screen.getByRole('combobox', { name: 'Look at' }), 'All set-ups');
    expect(sheet.getState().setUp).toBeUndefined();
  });

  it('has no fault an accessibility checker finds', async () => {
    sheet.setState({ setUp: 1 });
    const { container } = render(<Sheet />);
    const { violations } = await axe.run(container, { rules: { 'color-contrast': { enabled: false }, region: { enabled: false } } });
    expect(violations.map(({ id }) => id)).toEqual([]);
  });

  it('has a button for each list that new places are for', async () => {
    render(<Sheet />);
    await userEvent.click(screen.getByRole('button', { name: 'Add to lines' }));
    expect([sheet.getState().tool, sheet.getState().adding]).toEqual(['add', 2]);
    await userEvent.click(screen.getByRole('button', { name: 'Add to screws' }));
    expect([sheet.getState().tool, sheet.getState().adding]).toEqual(['add', 1]);
    expect(screen.getByRole('button', { name: 'Add to screws' }).getAttribute('aria-pressed')).toBe('true');
    await userEvent.click(screen.getByRole('button', { name: 'Add to screws' }));
    expect([sheet.getState().tool, sheet.getState().adding]).toEqual(['look', undefined]);
  });
});
