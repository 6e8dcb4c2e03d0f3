// @vitest-environment happy-dom
import { act, cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import axe from 'axe-core';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { overlay } from '../../../src/editor/playback/overlay.ts';
import { Sheet } from '../../../src/editor/sheet/Sheet.tsx';
import { sheetCommands } from '../../../src/editor/sheet/commands.ts';
import { doubtsAt, doubtsOf } from '../../../src/editor/sheet/doubts.ts';
import { drawMoment, drawValues } from '../../../src/editor/sheet/drawing.ts';
import { act as clickSheet, pointAt } from '../../../src/editor/sheet/pointing.ts';
import { frameOf, sheet } from '../../../src/editor/sheet/store.ts';
import { toScreen } from '../../../src/editor/sheet/view.ts';
import { editor } from '../../../src/editor/state/editor.ts';
import type { PictureLayer } from '../../../src/values/picture.ts';
import { CROSS, CROSS_PICTURE, mends, showCross } from './hand-sample.ts';
import { PALETTE, RecordedPath, recordingContext } from './recording.ts';
import { HOLES_PICTURE } from './samples.ts';

vi.mock('../../../src/editor/worker/client.ts', () => ({ ask: () => Promise.reject(new Error('not asked')) }));

const DOUBTS: PictureLayer = { kind: 'doubts', name: 'doubts', items: [0, 1].map(() => ({ d: 'M253 100A3 3 0 0 1 247 100A3 3 0 0 1 253 100Z', title: 'stroke 1: could turn' })) };
const DOUBTED = { ...CROSS_PICTURE, outputs: { ...CROSS_PICTURE.outputs, layers: [CROSS, DOUBTS] } };

beforeEach(() => {
  vi.stubGlobal('Path2D', RecordedPath);
  vi.stubGlobal('matchMedia', () => ({ matches: true, addEventListener: () => undefined, removeEventListener: () => undefined }));
  showCross();
});
afterEach(cleanup);

const bar = () => screen.getByRole('toolbar', { name: 'Work by hand' });
const pressed = () => within(bar()).getAllByRole('button', { pressed: true }).map(({ textContent }) => textContent);
const point = (x: number, y: number) => act(() => pointAt(toScreen(frameOf(sheet.getState()), { x, y })));

function drawn(draw: typeof drawMoment) {
  const { ctx, calls } = recordingContext();
  draw(ctx, { editor: editor.getState(), sheet: sheet.getState(), overlay: overlay.getState(), palette: PALETTE, ratio: 1 });
  return calls;
}

describe('the bar of ways', () => {
  it('is there only for a node that takes edits, with its acts in words and what to do next', async () => {
    render(<Sheet />);
    expect(within(bar()).getAllByRole('button').map(({ textContent }) => textContent)).toEqual(['Nudge', 'Marry', 'Snip', 'Tie', 'Drop', 'Draw']);
    expect(pressed()).toEqual(['Nudge']);
    await userEvent.click(within(bar()).getByRole('button', { name: 'Marry' }));
    expect(pressed()).toEqual(['Marry']);
    expect(screen.getByText(/Marry it\. Pull from one arm of a junction to another/)).toBeTruthy();
    await userEvent.click(screen.getByRole('button', { name: 'Tape' }));
    expect(within(bar()).queryAllByRole('button', { pressed: true })).toEqual([]);
    act(() => editor.setState({ picture: HOLES_PICTURE }));
    expect(screen.queryByRole('toolbar', { name: 'Work by hand' })).toBeNull();
  });

  it('is worked by keys on the sheet, and each step is said', async () => {
    render(<Sheet />);
    act(() => screen.getByRole('application').focus());
    const run = (id: string) => act(() => void sheetCommands.find((command) => command.id === id)!.run());
    run('sheet-way-next');
    expect(pressed()).toEqual(['Marry']);
    run('sheet-way-next');
    run('sheet-next');
    expect(screen.getByText('Stroke 1 of 2, 150.0 of 300.0 mm along: x 250.00, y 100.00 mm')).toBeTruthy();
    await userEvent.keyboard('{ArrowLeft}{Enter}');
    expect(mends()).toHaveLength(1);
    expect(screen.getByText('Snip: done, as edit 1. Undo takes it back.')).toBeTruthy();
    run('sheet-way-before');
    run('sheet-way-before');
    run('sheet-next');
    await userEvent.keyboard('{Enter}{ArrowUp}');
    expect(screen.getByText(/^Dragged to x .* Escape takes it back\.$/)).toBeTruthy();
    await userEvent.keyboard('{Escape}');
    expect(mends()).toHaveLength(1);
  });

  it('ends or gives up a line without keys', async () => {
    render(<Sheet />);
    await userEvent.click(within(bar()).getByRole('button', { name: 'Draw' }));
    const [end, leave] = [screen.getByRole<HTMLButtonElement>('button', { name: 'End it here' }), screen.getByRole<HTMLButtonElement>('button', { name: 'Give it up' })];
    expect([end.disabled, leave.disabled]).toEqual([true, true]);
    const place = (x: number, y: number) => {
      point(x, y);
      act(() => clickSheet());
    };
    place(120, 30);
    await userEvent.click(leave);
    expect(sheet.getState().picked).toEqual([]);
    place(120, 30);
    place(160, 60);
    await userEvent.click(end);
    expect(mends()).toMatchObject([{ act: 'draw' }]);
  });

  it('says in a command why there is nothing to do by hand', () => {
    editor.setState({ picture: HOLES_PICTURE });
    expect(sheetCommands.find(({ id }) => id === 'sheet-way-next')!.refusal!()).toMatch(/choose a step/);
  });

  it('has no fault an accessibility checker finds', async () => {
    editor.setState({ picture: DOUBTED });
    sheet.setState({ inWords: true });
    const { container } = render(<Sheet />);
    const { violations } = await axe.run(container, { rules: { 'color-contrast': { enabled: false } } });
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join()}`)).toEqual([]);
  });
});

describe('what is drawn for work by hand', () => {
  const squares = () => drawn(drawMoment).filter(({ name, stroke }) => name === 'strokeRect' && stroke === 'petrol');
  it('are pegs on a junction for its arms, and ends where ends are taken', () => {
    expect(squares()).toEqual([]);
    sheet.setState({ way: 'marry' });
    expect(squares()).toHaveLength(4);
    sheet.setState({ way: 'tie' });
    expect(squares().map(({ args }) => args.slice(2))).toEqual([[9, 9], [9, 9], [9, 9], [9, 9]]);
    sheet.setState({ aimed: { kind: 'end', end: 0, at: { x: 100, y: 100 } } });
    expect(squares().filter(({ args }) => args[2] === 12)).toHaveLength(1);
  });

  it('is the way something is pulled along, dashed, and the places of an edit pointed at, numbered', () => {
    const dashed = () => drawn(drawMoment).filter(({ name, dash, stroke }) => name === 'stroke' && stroke === 'petrol' && dash.length > 0).length;
    expect(dashed()).toBe(0);
    sheet.setState({ pull: { from: { x: 150, y: 100 }, to: { x: 170, y: 140 }, onto: undefined } });
    expect(dashed()).toBe(1);
    sheet.setState({ pull: undefined });
    editor.setState(({ history }) => ({
      history: { ...history, document: { ...history.document, nodes: history.document.nodes.map((node) => (node.id === 'mend' ? { ...node, params: { mends: [{ act: 'tie', places: [{ x: 0, y: 0 }, { x: 1, y: 0 }] }] } } : node)) } },
      pointed: { node: 'mend', param: 'mends', index: 0, goes: false },
    }));
    expect(dashed()).toBe(1);
    expect(drawn(drawMoment).filter(({ name }) => name === 'fillText').map(({ args }) => args[0])).toEqual(expect.arrayContaining(['1', '2']));
  });
});

describe('doubts', () => {
  beforeEach(() => editor.setState({ picture: DOUBTED }));

  it('are told once each, at rings never too small to point at', () => {
    const doubts = doubtsOf(DOUBTED, new Set());
    expect(doubts).toEqual([{ at: [250, 100], radius: 3, says: 'stroke 1: could turn', status: 'caution', node: 'mend' }]);
    const far = { ...frameOf(sheet.getState()), scale: 0.05 };
    const at = toScreen(far, { x: 250, y: 100 });
    expect(doubtsAt(doubts, far, { x: at.x + 10, y: at.y })).toHaveLength(1);
    expect(doubtsAt(doubts, far, { x: at.x + 14, y: at.y })).toEqual([]);
    expect(doubtsOf(DOUBTED, new Set(['doubts']))).toEqual([]);
    expect(doubtsOf(CROSS_PICTURE, new Set())).toEqual([]);
  });

  it('are drawn as dashed rings with a sign, not by colour alone', () => {
    const rings = drawn(drawValues).filter(({ name, stroke, dash }) => name === 'stroke' && stroke === 'caution' && dash.length > 0);
    expect(rings).toHaveLength(2);
    expect(drawn(drawValues).some(({ name, args }) => name === 'fillText' && args[0] === '?')).toBe(true);
  });

  it('say their sentence where one points, and are listed in words, from where one goes to them', async () => {
    render(<Sheet />);
    point(252, 101);
    expect(screen.getByText('? stroke 1: could turn')).toBeTruthy();
    await userEvent.click(screen.getByRole('button', { name: 'In words' }));
    await userEvent.click(screen.getByRole('button', { name: 'Show the place of doubt 1' }));
    expect(editor.getState().spot).toMatchObject({ at: [250, 100], says: 'stroke 1: could turn', status: 'caution' });
  });

  it('are not among the layers where there are none', () => {
    render(<Sheet />);
    expect(screen.getByRole('checkbox', { name: 'doubts' })).toBeTruthy();
    act(() => editor.setState({ picture: CROSS_PICTURE }));
    expect(screen.queryByRole('checkbox', { name: 'doubts' })).toBeNull();
    expect(screen.queryByRole('button', { name: 'In words' })).toBeNull();
  });
});
