// @vitest-environment happy-dom
import { act, cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import axe from 'axe-core';
import { unzipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { FileBar } from '../../../src/editor/files/FileBar.tsx';
import { openRecipe } from '../../../src/editor/files/open.ts';
import { printScale } from '../../../src/editor/files/scale.ts';
import { files } from '../../../src/editor/files/state.ts';
import { clock, lasted, measured, sized, spaced } from '../../../src/editor/files/words.ts';
import { zipped } from '../../../src/editor/files/zip.ts';
import { keepPiece, keptPieces, removePiece, renamePiece } from '../../../src/editor/files/pieces.ts';
import { edit, editor, present } from '../../../src/editor/state/editor.ts';
import type { Outcome, PlacedCheck } from '../../../src/editor/worker/protocol.ts';
import { type Downloaded, freshPage, notices } from './desk.ts';

const asked: { graph: string; draft: boolean }[] = [];
const RESULTS = [{ path: 'drawing.svg', text: '<svg/>' }, { path: 'report.json', text: '{"ä":1}\n' }];
const PROGRAMS = [{ path: 'programs/set-up-1-cutter-1.ngc', text: 'G21\n' }, { path: 'programs/set-up-1-cutter-2.ngc', text: 'G21\nM2\n' }];
let handedOut = [...RESULTS, ...PROGRAMS];

vi.mock('../../../src/editor/worker/client.ts', () => ({
  ask: (_question: string, what: { graph: string; draft: boolean }) => {
    asked.push(what);
    return handedOut.length === 0 ? Promise.reject({ expected: 'a sheet', found: 'none', advice: 'Add one.' }) : Promise.resolve(handedOut);
  },
}));

const check = (status: PlacedCheck['status']): PlacedCheck => ({ check: 'bend', status, value: 27, limit: 30, unit: 'mm', says: 'Bend radius 27 mm, at least 30 mm. Widen the bend.', node: 'bends' });

function outcome(more: Partial<Outcome> = {}): void {
  const listed = handedOut.map(({ path, text }) => ({ path, characters: text.length }));
  editor.setState({ outcome: { status: 'pass', checks: [check('pass')], quantities: { length: { value: 2840.123456789, unit: 'mm' } }, files: listed, keptBack: [], ...more } });
}

let downloads: Downloaded[];
beforeEach(async () => {
  ({ downloads } = freshPage());
  asked.length = 0;
  handedOut = [...RESULTS, ...PROGRAMS];
  await openRecipe('drawn-strokes');
});
afterEach(() => {
  cleanup();
  vi.useRealTimers();
  vi.unstubAllEnvs();
  vi.restoreAllMocks();
});

const show = () => { render(<FileBar />); return userEvent.setup({ delay: null }); };
const button = (name: string | RegExp) => screen.getByRole('button', { name });
const dialog = () => within(screen.getByRole('dialog'));

describe('the file bar', () => {
  it('says what is open, whether it is saved, how large it is and how long it took', () => {
    editor.setState({ running: { revision: 1, state: 'done', done: 1, milliseconds: 4900 } });
    show();
    expect(screen.getByText(/unchanged/).parentElement!.textContent).toBe(`unchanged · ${present().nodes.length} steps · 4.9 s`);
  });

  it('renames the recipe where its title stands: Enter takes it, Escape does not, nothing is no title', async () => {
    const user = show();
    const title = screen.getByLabelText('Title of the recipe');
    await user.clear(title);
    await user.type(title, ' Lamp stall {Enter}');
    expect(present().title).toBe('Lamp stall');
    await user.type(title, 'x{Escape}');
    await user.clear(title);
    await user.tab();
    expect(present().title).toBe('Lamp stall');
    expect(editor.getState().history.past).toHaveLength(1);
    expect(screen.getByText('not saved')).toBeTruthy();
  });

  it('says when it was saved, until something changes', async () => {
    const user = show();
    edit('rename', (draft) => { draft.title = 'Other'; });
    await user.click(button('Save'));
    expect(await screen.findByText(/^saved \d\d:\d\d$/)).toBeTruthy();
  });

  it('cannot hand out anything before anything was computed, and says why', async () => {
    editor.setState({ running: { revision: 1, state: 'computing', done: 0, milliseconds: 0 } });
    const user = show();
    for (const name of ['Results', 'Take the programs']) {
      expect(button(name).getAttribute('aria-disabled')).toBe('true');
      expect(button(name).title).toBe('Still computing.');
      await user.click(button(name));
    }
    expect(screen.queryByRole('dialog')).toBeNull();
  });
});

describe('taking the programs', () => {
  it('tells what to mind first, then hands them out as one archive', async () => {
    outcome();
    const user = show();
    await user.click(button('Take the programs'));
    expect(dialog().getByText(/first run go above the material/)).toBeTruthy();
    await user.click(dialog().getByRole('button', { name: 'Take 2 programs as one archive' }));
    await vi.waitFor(() => { expect(downloads.map(({ name }) => name)).toEqual(['drawn-strokes-programs.zip']); });
    expect(Object.keys(unzipSync(await downloads[0]!.bytes()))).toEqual(PROGRAMS.map(({ path }) => path));
    expect(asked).toEqual([{ graph: 'drawn-strokes.json', draft: false }]);
  });

  it('hands out a single one as it is', async () => {
    handedOut = [...RESULTS, PROGRAMS[0]!];
    outcome();
    const user = show();
    await user.click(button('Take the programs'));
    await user.click(dialog().getByRole('button', { name: 'Take the program' }));
    await vi.waitFor(() => { expect(downloads.map(({ name }) => name)).toEqual(['set-up-1-cutter-1.ngc']); });
    expect(await downloads[0]!.text()).toBe('G21\n');
  });

  it('is refused while a check fails, with the reason; drafts are offered with a caution', async () => {
    handedOut = RESULTS;
    outcome({ status: 'fail', checks: [check('pass'), check('fail')], keptBack: [PROGRAMS[0]!.path] });
    const user = show();
    expect(button('Take the programs').getAttribute('aria-disabled')).toBe('true');
    await user.click(button('Take the programs'));
    expect(screen.queryByRole('dialog')).toBeNull();
    await user.click(button('1 check fails: 1 program kept back'));
    expect(dialog().getAllByText(/Widen the bend/)).toHaveLength(1);
    expect(dialog().getByText(/a draft is for looking at, not for cutting/)).toBeTruthy();
    handedOut = [...RESULTS, PROGRAMS[0]!];
    await user.click(dialog().getByRole('button', { name: 'Take the draft' }));
    await vi.waitFor(() => { expect(asked).toEqual([{ graph: 'drawn-strokes.json', draft: true }]); });
  });

  it('waits while something is being computed', async () => {
    outcome();
    editor.setState({ running: { revision: 2, state: 'computing', done: 0, milliseconds: 0 } });
    const user = show();
    await user.click(button('Take the programs'));
    await user.click(dialog().getByRole('button', { name: 'Still computing …' }));
    expect(asked).toEqual([]);
  });
});

describe('the results', () => {
  it('are listed with their sizes, and each can be taken', async () => {
    outcome();
    const user = show();
    await user.click(button('Results'));
    expect(dialog().getAllByRole('row').slice(1).map((row) => row.textContent)).toEqual(['drawing.svg6 bytes', 'report.json8 bytes', 'programs/set-up-1-cutter-1.ngc4 bytes', 'programs/set-up-1-cutter-2.ngc7 bytes']);
    await user.click(dialog().getByRole('button', { name: 'report.json' }));
    await vi.waitFor(async () => { expect(await downloads[0]?.text()).toBe('{"ä":1}\n'); });
  });

  it('are all in one archive, text for text', async () => {
    outcome();
    const user = show();
    await user.click(button('Results'));
    await user.click(dialog().getByRole('button', { name: 'Take all 4 results' }));
    await vi.waitFor(() => { expect(downloads).toHaveLength(1); });
    const found = unzipSync(await downloads[0]!.bytes());
    expect(Object.entries(found).map(([path, bytes]) => ({ path, text: new TextDecoder().decode(bytes) }))).toEqual(handedOut);
  });

  it('that cannot be put together are told with what to do', async () => {
    outcome();
    handedOut = [];
    const user = show();
    await user.click(button('Results'));
    await user.click(dialog().getByRole('button', { name: /Take all/ }));
    await vi.waitFor(() => { expect(notices().at(-1)).toBe('The results could not be put together. Expected a sheet, found none. Add one.'); });
  });
});

describe('an archive', () => {
  it('holds bytes that are no text as they are', () => {
    const found = unzipSync(zipped([{ path: 'sheet.pdf', base64: 'JVBERi0xLjcKAP+A' }]));
    expect([...found['sheet.pdf']!]).toEqual([37, 80, 68, 70, 45, 49, 46, 55, 10, 0, 255, 128]);
  });

  it('has the same bytes in every place and at every time', () => {
    const made = [...zipped(RESULTS)];
    vi.useFakeTimers({ now: new Date(2031, 5, 6), toFake: ['Date'] });
    for (const place of ['Pacific/Auckland', 'America/Anchorage']) {
      vi.stubEnv('TZ', place);
      expect([...zipped(RESULTS)]).toEqual(made);
    }
  });
});

describe('everything the bar opens', () => {
  it.each(['none', 'open', 'programs', 'results', 'damage', 'unsaved', 'refused'] as const)('has nothing an accessibility check objects to: %s', async (kind) => {
    outcome({ status: 'fail', checks: [check('fail')], keptBack: ['programs/a.ngc'] });
    const problem = { code: 'not-json', expected: 'a', found: 'b', advice: 'C.' } as const;
    editor.setState(({ file }) => ({ file: { ...file, damage: { text: '', problems: [problem] } } }));
    if (kind === 'open') files.setState({ dialog: { kind, first: 'recipes' } });
    else if (kind === 'unsaved') files.setState({ dialog: { kind, next: () => undefined } });
    else if (kind === 'refused') files.setState({ dialog: { kind, name: 'a.json', problems: [problem], salvage: { steps: 2, open: () => undefined } } });
    else if (kind !== 'none') files.setState({ dialog: { kind } });
    const { container } = render(<main><FileBar /></main>);
    if (kind === 'open') await screen.findByRole('button', { name: 'Drawn strokes' }, { timeout: 10_000 });
    const { violations } = await axe.run(container, { rules: { 'color-contrast': { enabled: false } } });
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
  });
});

describe('what is said and printed', () => {
  it.each([[0, '0 bytes'], [1, '1 byte'], [999, '999 bytes'], [1000, '1.0 kB'], [12_345, '12 kB'], [2.5e6, '2.5 MB']])('names %d bytes %s', (bytes, says) => { expect(sized(bytes)).toBe(says); });
  it.each([[12.4, '12 ms'], [4900, '4.9 s']])('names %d milliseconds %s', (time, says) => { expect(lasted(time)).toBe(says); });
  it.each([[27681.63, 'mm2', '27681.6 mm²'], [10, 'count', '10'], [0.5, 'ratio', '0.5'], [1600, 'mm/min', '1600 mm/min']])('names %d %s as %s', (value, unit, says) => { expect(measured(value, unit)).toBe(says); });
  it('names figures in words', () => { expect(['grooveArea', 'strokes', 'reachX2'].map(spaced)).toEqual(['groove area', 'strokes', 'reach x2']); });
  it('prints the picture to scale, every check with its step, and the figures, and only while printing', () => {
    outcome();
    const box = { minX: 0, minY: 0, maxX: 1200, maxY: 600 };
    editor.setState({ picture: { node: 'groove', inputs: [], spots: {}, junctions: {}, playable: false, outputs: { lines: [], box, layers: [{ kind: 'sheet', name: 'sheet', items: [{ d: 'M0 0L1200 0L1200 600Z' }] }] } } });
    show();
    act(() => { dispatchEvent(new Event('beforeprint')); });
    const printed = document.querySelector('.print')!.textContent;
    expect(printed).toContain('1200 × 600 mm. Scale 1 : 10');
    expect(printed).toContain('Bend radius 27 mm, at least 30 mm.');
    expect(printed).toContain('length2840.12 mm');
    expect(document.querySelector('.print svg')!.getAttribute('width')).toBe('120mm');
    act(() => { dispatchEvent(new Event('afterprint')); });
    expect(document.querySelector('.print')).toBeNull();
  });
  it('names the day only when it is another one', () => {
    const now = new Date(2030, 4, 3, 14, 2);
    expect([clock(now, now), clock(now, new Date(2030, 4, 4))]).toEqual(['14:02', '3 May, 14:02']);
  });
  it.each([[180, 150, 1], [181, 150, 2], [100, 301, 5], [1200, 600, 10], [180_000, 150_000, 1000], [200_000, 1, undefined]])('prints %d × %d mm to the scale that fits', (width, height, scale) => {
    expect(printScale({ minX: -5, minY: 3, maxX: width - 5, maxY: height + 3 })).toBe(scale);
  });
});

describe('pieces put by', () => {
  it('are listed by title, renamed and removed', async () => {
    const board = await keepPiece('Board', 'b');
    await keepPiece('Ärmel', 'a');
    expect((await keptPieces()).map(({ title, text }) => [title, text])).toEqual([['Ärmel', 'a'], ['Board', 'b']]);
    await renamePiece(board!.id, 'A board');
    await removePiece((await keptPieces()).find(({ title }) => title === 'Ärmel')!.id);
    expect((await keptPieces()).map(({ title }) => title)).toEqual(['A board']);
  });
});
