// @vitest-environment happy-dom
import { act, cleanup, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { StrictMode } from 'react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Bench } from '../../../src/editor/canvas/Bench.tsx';
import { bench } from '../../../src/editor/canvas/state.ts';
import { editor, initialState, openDocument, present, undoStep } from '../../../src/editor/state/editor.ts';
import type { NodeReport } from '../../../src/editor/worker/protocol.ts';
import { DOCUMENT, SHAPES } from './sample.ts';

const clean = bench.getState();
const told = vi.fn();

beforeEach(async () => {
  told.mockClear();
  document.elementsFromPoint = () => [];
  document.elementFromPoint = () => null;
  vi.spyOn(console, 'error').mockImplementation(told);
  vi.spyOn(console, 'warn').mockImplementation(told);
  editor.setState({ ...initialState, shapes: SHAPES });
  bench.setState(clean, true);
  openDocument(DOCUMENT, { name: 'x.json', saved: DOCUMENT });
  render(<StrictMode><Bench /></StrictMode>);
  await waitFor(() => expect(document.querySelectorAll('.bench-card')).toHaveLength(DOCUMENT.nodes.length));
});
afterEach(() => {
  cleanup();
  expect(told).not.toHaveBeenCalled();
  vi.restoreAllMocks();
});

const card = (name: RegExp) => screen.getByRole('group', { name });
const report = (part: Partial<NodeReport>): NodeReport => ({
  state: 'ready', says: '', thumbnail: { layers: [], lines: [] }, problems: [], cautions: [], missing: [], milliseconds: 0, ...part,
});
const tell = (id: string, part: Partial<NodeReport>) => act(() => editor.setState(({ reports }) => ({ reports: new Map([...reports, [id, report(part)]]) })));
const problem = { expected: 'a stroke', found: 'none', advice: 'Choose a drawing.' };

describe('a card', () => {
  it('says what came out, how it is doing and what its ports are wired to', () => {
    tell('cut', { says: '3 strokes', cautions: [problem, problem] });
    expect(card(/^Cut, step 2 of 4, 3 strokes, 2 cautions/)).toBeTruthy();
    expect(within(card(/^Cut/)).getByRole('button', { name: /^strokes, wired to Drawing/ })).toBeTruthy();
  });

  it('says the problem that stopped it, and its input what does not come', () => {
    tell('cut', { state: 'failed', problems: [problem] });
    tell('edge', { state: 'blocked', missing: [{ port: 'region', from: 'cut' }] });
    expect(card(/^Cut/).textContent).toContain('Expected a stroke, found none. Choose a drawing.');
    expect(within(card(/^Board/)).getByRole('button', { name: /nothing comes from there/ })).toBeTruthy();
  });

  it('of an unknown type keeps its values and says so', async () => {
    act(() => openDocument({ ...DOCUMENT, nodes: [{ id: 'odd', type: 'glow', position: [0, 0], params: { a: 1 } }], wires: [] }, { name: 'x', saved: undefined }));
    await waitFor(() => expect(card(/^glow/).textContent).toContain('unknown step'));
    expect(present().nodes[0]!.params).toEqual({ a: 1 });
  });

  it('draws no other card again when its own report comes', () => {
    const before = card(/^Board/).innerHTML;
    tell('pen', { says: 'a word' });
    expect(card(/^Board/).innerHTML).toBe(before);
    expect(card(/^Drawing, step 1 of 4, a word/)).toBeTruthy();
  });
});

describe('by keyboard', () => {
  const focus = (name: RegExp) => act(() => card(name).focus());

  it('the arrows follow the wires and what one stands on is chosen', async () => {
    focus(/^Drawing/);
    await userEvent.keyboard('{ArrowRight}');
    expect(document.activeElement).toBe(card(/^Cut/));
    expect(editor.getState().chosen).toEqual(['cut']);
    expect(editor.getState().shown).toBe('cut');
    await userEvent.keyboard('{End}{Home}');
    expect(document.activeElement).toBe(card(/^Drawing/));
  });

  it('the bench is one tab stop', () => {
    focus(/^Cut/);
    expect([...document.querySelectorAll<HTMLElement>('.bench-card')].filter(({ tabIndex }) => tabIndex === 0)).toEqual([card(/^Cut/)]);
  });

  it('Enter opens a card, Escape comes back from its inside', async () => {
    focus(/^Cut/);
    await userEvent.keyboard('{Enter}');
    expect(editor.getState().opened).toEqual(['cut']);
    await waitFor(() => expect(document.activeElement?.closest('.bench-inside')).not.toBeNull());
    await userEvent.keyboard('{Escape}');
    expect(document.activeElement).toBe(card(/^Cut/));
  });

  it('a wire is laid from lists, and undone', async () => {
    focus(/^Drawing/);
    act(() => bench.setState({ wiring: { card: 'pen' } }));
    await userEvent.keyboard('{Enter}');
    await userEvent.click(screen.getByRole('button', { name: /^Smooth strokes/ }));
    expect(present().wires).toContainEqual({ from: 'pen.strokes', to: 'other.strokes' });
    act(undoStep);
    expect(present()).toEqual(DOCUMENT);
  });

  it('the menu of a card is walked through and closed', async () => {
    focus(/^Cut/);
    await userEvent.keyboard('{ContextMenu}');
    expect(screen.getByRole('menu')).toBeTruthy();
    await userEvent.keyboard('{ArrowDown}');
    expect(document.activeElement?.textContent).toContain('Wire');
    await userEvent.keyboard('{Escape}');
    expect(screen.queryByRole('menu')).toBeNull();
    expect(document.activeElement).toBe(card(/^Cut/));
  });
});

describe('the search', () => {
  it('finds by words and adds what is picked, chosen and focused', async () => {
    act(() => bench.setState({ adding: { at: [0, 900] } }));
    await userEvent.keyboard('smo{Enter}');
    const added = present().nodes.at(-1)!;
    expect(added.type).toBe('smooth');
    expect(editor.getState().chosen).toEqual([added.id]);
    await waitFor(() => expect(document.activeElement?.getAttribute('data-node')).toBe(added.id));
  });

  it('for a port offers only what fits it, and wires it', async () => {
    act(() => bench.setState({ adding: { at: [0, 900], port: { side: 'output', node: 'pen', port: 'strokes' } } }));
    expect(screen.getAllByRole('option').map(({ textContent }) => textContent.split(' to its')[0])).toEqual(['Groove', 'Smooth']);
    await userEvent.keyboard('{ArrowDown}{Enter}');
    expect(present().wires.at(-1)).toEqual({ from: 'pen.strokes', to: `${present().nodes.at(-1)!.id}.strokes` });
  });

  it('for a wire offers only what can be put into it', async () => {
    act(() => bench.setState({ adding: { at: [0, 900], into: DOCUMENT.wires[0]! } }));
    expect(screen.getAllByRole('option')).toHaveLength(1);
    await userEvent.keyboard('{Enter}');
    expect(present().wires).toHaveLength(3);
    expect(present().nodes.at(-1)!.type).toBe('smooth');
  });

  it('says so when nothing is called that, and Escape closes it', async () => {
    act(() => bench.setState({ adding: { at: [0, 0] } }));
    await userEvent.keyboard('zzzzqqqq');
    expect(screen.getByText(/Try another word/)).toBeTruthy();
    await userEvent.keyboard('{Escape}');
    expect(screen.queryByRole('combobox')).toBeNull();
  });
});

describe('by hand', () => {
  const pointer = (type: string, on: EventTarget, x: number, y: number, more: PointerEventInit = {}) =>
    act(() => void on.dispatchEvent(new PointerEvent(type, { bubbles: true, pointerId: 1, pointerType: 'mouse', button: 0, clientX: x, clientY: y, ...more })));

  it('a drag of several cards is one step to undo', () => {
    act(() => editor.setState({ chosen: ['pen', 'cut'] }));
    const k = 1 / Number(/scale\(([\d.]+)\)/.exec(document.querySelector<HTMLElement>('.bench-area > div')!.style.transform)?.[1] ?? 1);
    pointer('pointerdown', card(/^Cut/), 10, 10);
    for (const x of [20, 40, 60]) pointer('pointermove', window, x, 10);
    expect(present()).toEqual(DOCUMENT);
    pointer('pointerup', window, 60, 10);
    expect(present().nodes.slice(0, 2).map(({ position }) => position[0])).toEqual([Math.round(50 * k), 400 + Math.round(50 * k)]);
    expect(editor.getState().history.past).toHaveLength(1);
  });

  it('a wire pulled over a wrong port says why, and is not laid', () => {
    const port = (name: RegExp, on: RegExp) => within(card(on)).getAllByRole('button', { name })[0]!;
    const wrong = port(/^region/, /^Board/);
    document.elementFromPoint = () => wrong;
    pointer('pointerdown', port(/^strokes/, /^Drawing/), 10, 10);
    pointer('pointermove', window, 300, 10);
    expect(screen.getByRole('alert').textContent).toMatch(/strokes.*region/);
    expect(port(/^strokes/, /^Smooth/).className).toContain('bench-port-fits');
    expect(wrong.className).toContain('bench-port-away');
    pointer('pointerup', window, 300, 10);
    expect(present()).toEqual(DOCUMENT);
    expect(bench.getState().says).toMatch(/region/);
  });

  it('a wire loosened and let go over the empty bench is gone', () => {
    document.elementFromPoint = () => document.querySelector('.bench-area');
    pointer('pointerdown', within(card(/^Cut/)).getByRole('button', { name: /^strokes/ }), 10, 10);
    pointer('pointermove', window, 300, 10);
    pointer('pointerup', window, 300, 10);
    expect(present().wires).toEqual([DOCUMENT.wires[1]]);
  });

  it('a wire let go over the empty bench asks for a step that takes it', () => {
    document.elementFromPoint = () => document.querySelector('.bench-area');
    pointer('pointerdown', within(card(/^Drawing/)).getByRole('button', { name: /^strokes/ }), 10, 10);
    pointer('pointermove', window, 300, 10);
    pointer('pointerup', window, 300, 10);
    expect(screen.getByRole('dialog', { name: 'Add a step that takes strokes of Drawing' })).toBeTruthy();
  });

  it('a gesture the browser takes away leaves everything as it was', () => {
    pointer('pointerdown', card(/^Cut/), 10, 10);
    pointer('pointermove', window, 90, 10);
    pointer('pointercancel', window, 90, 10);
    expect(present()).toEqual(DOCUMENT);
  });
});

it('folds and unfolds a group, and undoing gives the bench back', async () => {
  act(() => openDocument({ ...DOCUMENT, groups: [{ id: 'both', title: 'Both', nodes: ['cut', 'edge'], collapsed: false }] }, { name: 'x', saved: undefined }));
  await userEvent.click(within(screen.getByRole('group', { name: 'Group Both, 2 steps' })).getByRole('button', { name: 'Fold' }));
  await waitFor(() => expect(card(/^Both, group of 2 steps/)).toBeTruthy());
  expect(document.querySelectorAll('.bench-card')).toHaveLength(3);
  act(undoStep);
  await waitFor(() => expect(document.querySelectorAll('.bench-card')).toHaveLength(4));
});

it('says what to do when nothing is there', () => {
  act(() => openDocument({ ...DOCUMENT, nodes: [], wires: [] }, { name: 'x', saved: undefined }));
  expect(screen.getByText('Nothing is on the bench yet.')).toBeTruthy();
});
