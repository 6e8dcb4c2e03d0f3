// @vitest-environment happy-dom
import { act, cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import axe from 'axe-core';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Sheet } from '../../../src/editor/sheet/Sheet.tsx';
import { readingWords } from '../../../src/editor/sheet/Readout.tsx';
import { sheetCommands } from '../../../src/editor/sheet/commands.ts';
import { sheet } from '../../../src/editor/sheet/store.ts';
import { editor, show } from '../../../src/editor/state/editor.ts';
import { HOLES_PICTURE, STROKES_PICTURE, picture, showSample } from './samples.ts';

const answers = vi.hoisted(() => ({ probe: [{ says: 'width here', value: 10.001, unit: 'mm', at: [510, 250] }] as unknown }));
vi.mock('../../../src/editor/worker/client.ts', () => ({
  ask: (question: string) => (question === 'probe' ? Promise.resolve(answers.probe) : Promise.reject(new Error('not asked'))),
}));

beforeEach(() => {
  // Flights go on after a test; who wants little motion is there at once.
  vi.stubGlobal('matchMedia', () => ({ matches: true, addEventListener: () => undefined, removeEventListener: () => undefined }));
  showSample(HOLES_PICTURE);
});
afterEach(cleanup);

const stage = () => screen.getByRole('application');

describe('the sheet', () => {
  it('says what it shows, and in words what is drawn', () => {
    const report = { state: 'ready' as const, says: '2 holes', thumbnail: { layers: [], lines: [] }, problems: [], cautions: [], missing: [], milliseconds: 1 };
    editor.setState({ reports: new Map([['holes', report]]), shown: 'holes' });
    render(<Sheet />);
    expect(screen.getByRole('heading', { name: /Corner holes.*2 holes/ })).toBeTruthy();
    expect(screen.getByRole('img', { name: 'Corner holes: 2 holes. Drawn: holes, 2.' })).toBeTruthy();
    act(() => editor.setState({ shown: undefined }));
    expect(screen.getByRole('heading', { name: 'The whole sign' })).toBeTruthy();
    act(() => editor.setState(({ running }) => ({ running: { ...running, state: 'computing' } })));
    expect(screen.getByText('computing …')).toBeTruthy();
  });

  it('hides a layer by its name, also in the next picture', async () => {
    showSample(STROKES_PICTURE);
    render(<Sheet />);
    await userEvent.click(screen.getByRole('checkbox', { name: 'strokes' }));
    act(() => editor.setState({ picture: { ...STROKES_PICTURE } }));
    expect(screen.getByRole<HTMLInputElement>('checkbox', { name: 'strokes' }).checked).toBe(false);
    expect(screen.getByRole<HTMLInputElement>('checkbox', { name: 'sheet' }).checked).toBe(true);
    expect([...sheet.getState().hidden]).toEqual(['strokes']);
  });

  it('keeps what is pinned when something else is chosen, until let go', async () => {
    render(<Sheet />);
    await userEvent.click(screen.getByRole('button', { name: 'Pin' }));
    show('place');
    expect(editor.getState().shown).toBe('holes');
    await userEvent.click(screen.getByRole('button', { name: 'Whole sign' }));
    expect(editor.getState()).toMatchObject({ shown: undefined, pinned: false });
    show('place');
    expect(editor.getState().shown).toBe('place');
  });

  it('shows values without a shape as text: pairs as a table', () => {
    editor.setState({ picture: picture('holes', [], { outputs: { layers: [], lines: ['length: 4 mm', 'area: 5 mm2'] } }) });
    render(<Sheet />);
    expect(screen.queryByRole('application')).toBeNull();
    expect(within(screen.getByRole('row', { name: /area/ })).getByRole('cell').textContent).toBe('5 mm2');
  });

  it('shows the checks of a step as a table, the worst first, from which one goes to the place', async () => {
    const check = (status: 'pass' | 'fail', says: string) => ({ check: 'x', status, value: 1, limit: 2, unit: 'mm', at: [500, 250] as const, says, node: 'holes' });
    editor.setState({
      outcome: { status: 'fail', checks: [check('pass', 'Fine.'), check('fail', 'Too thin.')], quantities: {}, files: [], keptBack: [] },
      picture: picture('holes', HOLES_PICTURE.outputs.layers, { outputs: { layers: HOLES_PICTURE.outputs.layers, lines: ['fail: Too thin.', 'pass: Fine.'] } }),
    });
    render(<Sheet />);
    await userEvent.click(screen.getByRole('button', { name: 'In words' }));
    const rows = screen.getAllByRole('row').slice(1);
    expect(rows.map((row) => within(row).getAllByRole('cell')[0]!.textContent)).toEqual(['✕ failed', '✓ in order']);
    await userEvent.click(within(rows[0]!).getByRole('button', { name: 'Show the place' }));
    expect(editor.getState().spot).toMatchObject({ says: 'Too thin.' });
    expect(screen.getByText(/Too thin\./, { selector: '.sheet-spot p' })).toBeTruthy();
    await userEvent.keyboard('{Escape}');
    expect(editor.getState().spot).toBeUndefined();
  });

  it('says what can be taken hold of, and offers to add and remove', async () => {
    render(<Sheet />);
    expect(screen.getByText('Drag a hole.')).toBeTruthy();
    const remove = screen.getByRole<HTMLButtonElement>('button', { name: 'Remove' });
    expect(remove.disabled).toBe(true);
    await userEvent.click(screen.getByRole('button', { name: 'Add place' }));
    expect(sheet.getState().tool).toBe('add');
    act(() => sheet.setState({ tool: 'look', grip: { handle: 0, place: 1 } }));
    expect(screen.getByText('Place 2 of 2 is held: x 950.00, y 450.00 mm')).toBeTruthy();
    await userEvent.click(remove);
    expect(editor.getState().history.document.nodes[3]!.params.places).toEqual([{ x: 50, y: 50 }]);
  });

  it('tells in words where the keys\' cursor is and what is measured there', async () => {
    render(<Sheet />);
    await act(async () => sheetCommands.find(({ id }) => id === 'sheet-read')!.run());
    act(() => stage().focus());
    await userEvent.keyboard('{ArrowRight}');
    expect(await screen.findByText('x 510.00, y 250.00 mm. width here 10.00 mm', {}, { timeout: 10_000 })).toBeTruthy();
    expect(screen.getByText('x 510.00 y 250.00 mm')).toBeTruthy();
  });

  it('stops keys it understood, and lets the others through', async () => {
    const through: string[] = [];
    const listen = ({ key }: KeyboardEvent) => through.push(key);
    addEventListener('keydown', listen);
    render(<Sheet />);
    act(() => stage().focus());
    await userEvent.keyboard('{ArrowRight}t');
    removeEventListener('keydown', listen);
    expect(through).toEqual(['t']);
  });

  it('says why there is no picture and what to do', () => {
    editor.setState({ picture: undefined });
    render(<Sheet />);
    expect(screen.getByText(/Choose a step on the bench/)).toBeTruthy();
    const problem = { expected: 'a sheet', found: 'none', advice: 'Wire a sheet.' };
    const report = { state: 'failed' as const, says: 'no sheet', thumbnail: { layers: [], lines: [] }, problems: [problem], cautions: [], missing: [], milliseconds: 1 };
    act(() => editor.setState({ picture: picture('holes', []), reports: new Map([['holes', report]]) }));
    expect(screen.getByText(/expected a sheet, found none. Wire a sheet./)).toBeTruthy();
    expect(screen.getByRole('heading', { name: /✕ no sheet/ })).toBeTruthy();
    expect(screen.queryByRole('application')).toBeNull();
  });

  it('shows nothing yet without an error, and has no fault a checker for accessibility finds', async () => {
    editor.setState({ picture: undefined });
    const { container } = render(<Sheet />);
    expect(screen.getByRole('img', { name: 'The sheet: nothing to show yet.' })).toBeTruthy();
    act(() => editor.setState({ picture: HOLES_PICTURE }));
    const { violations } = await axe.run(container, { rules: { 'color-contrast': { enabled: false } } });
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join()}`)).toEqual([]);
  });
});

describe('a reading', () => {
  it('has as many digits as one would read off a rule', () => {
    const words = (says: string, value: number, unit = 'mm') => readingWords({ says, value, unit, at: [0, 0] });
    expect(words('width here', 10.0004)).toBe('width here 10.00 mm');
    expect(words('radius here', 34.04)).toBe('radius here 34.0 mm');
    expect(words('length', 1234.4)).toBe('length 1234 mm');
    expect(words('radius here', Infinity)).toBe('radius here: no limit');
  });
});

describe('the sheet\'s commands', () => {
  it('say why they cannot be done', () => {
    const refusal = (id: string) => sheetCommands.find((command) => command.id === id)!.refusal?.();
    expect(refusal('sheet-add')).toBeUndefined();
    expect(refusal('sheet-remove')).toMatch(/choose one/);
    editor.setState({ picture: picture('sheet', []) });
    expect(refusal('sheet-add')).toMatch(/no places/);
    expect(refusal('sheet-next')).toMatch(/choose a step/);
    editor.setState({ picture: undefined });
    expect(refusal('sheet-tape')).toMatch(/nothing yet/);
  });

  it('have names, and keys of their own', () => {
    const keys = sheetCommands.flatMap((command) => command.keys ?? []);
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(sheetCommands.map(({ id }) => id)).size).toBe(sheetCommands.length);
  });
});
