// @vitest-environment happy-dom
import { act, cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import axe from 'axe-core';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Sheet } from '../../../src/editor/sheet/Sheet.tsx';
import { sheet } from '../../../src/editor/sheet/store.ts';
import { HOLES_PICTURE, PINS_PICTURE, showSample } from './samples.ts';

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

const choice = () => screen.getByRole<HTMLSelectElement>('combobox', { name: 'Look at' });
const look = (name: string) => userEvent.selectOptions(choice(), name);

describe('the choice of set-ups', () => {
  it('is not offered where all is cut in one', () => {
    showSample(HOLES_PICTURE);
    render(<Sheet />);
    expect(screen.queryByRole('combobox', { name: 'Look at' })).toBeNull();
  });

  it('says which is looked at and how the sheet lies, and tells the place under the pointer in its programs’ coordinates', async () => {
    render(<Sheet />);
    expect([...choice().options].map(({ textContent }) => textContent)).toEqual(['All set-ups', 'Set-up 1', 'Set-up 2', 'Set-up 3']);
    expect(choice().value).toBe('');
    await look('Set-up 2');
    expect([choice().value, sheet.getState().setUp]).toEqual(['1', 1]);
    expect(screen.getByText('Set-up 2 as it lies on the machine. After set-up 1 the sheet is moved 300 mm left.').getAttribute('role')).toBe('status');
    expect(screen.getByRole('img', { name: /Set-up 2 alone\. After set-up 1 the sheet is moved 300 mm left\. Drawn: pins; passes\. Faint, of earlier set-ups: passes\. Faint beneath: strokes, 2/ })).toBeTruthy();
    act(() => sheet.setState({ cursor: { x: 400, y: 20 } }));
    expect(screen.getByText('program x 100.00 y 20.00 mm · sheet x 400.00 y 20.00 mm')).toBeTruthy();
  });

  it('brings what other steps have in the set-ups, and lists its layers', async () => {
    render(<Sheet />);
    expect(asked).not.toContain('around');
    await look('Set-up 2');
    expect(await screen.findByRole('checkbox', { name: 'supports' })).toBeTruthy();
    await look('Set-up 3');
    expect(screen.queryByRole('checkbox', { name: 'supports' })).toBeNull();
    await look('All set-ups');
    expect(sheet.getState().around).toEqual([]);
    expect(asked.filter((question) => question === 'around').length).toBe(1);
  });

  it('speaks of what is held in the coordinates of the set-up; of a line only the one that counts', () => {
    sheet.setState({ setUp: 1, grip: { handle: 0, place: 0 } });
    render(<Sheet />);
    expect(screen.getByText('Place 1 of 1 is held: x 50.00, y 40.00 mm')).toBeTruthy();
    act(() => sheet.setState({ setUp: undefined, grip: { handle: 2, place: 0 } }));
    expect(screen.getByText('Place 1 of 1 is held: x 700.00 mm')).toBeTruthy();
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
