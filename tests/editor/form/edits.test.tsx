// @vitest-environment happy-dom
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import axe from 'axe-core';
import { afterEach, describe, expect, it } from 'vitest';
import { NodeForm } from '../../../src/editor/form/NodeForm.tsx';
import { editsLines, entryNamed, placesWords, readEdits } from '../../../src/editor/form/edits-text.ts';
import { editor, initialState, openDocument, present, undoStep } from '../../../src/editor/state/editor.ts';
import type { NodeReport } from '../../../src/editor/worker/protocol.ts';
import type { Edit } from '../../../src/runtime/index.ts';
import { MENDER, MENDS } from '../sheet/hand-sample.ts';
import { documentWith } from './every-kind.ts';

const SNIP: Edit = { act: 'snip', places: [{ x: 0.412, y: 0.1131 }] };
const TIE: Edit = { act: 'tie', places: [{ x: 0, y: 0 }, { x: 1, y: 0.5 }] };
const DROP: Edit = { act: 'drop', places: [{ x: -0.05, y: 0.2 }] };

function show(edits: readonly Edit[], report?: Partial<NodeReport>) {
  const document = documentWith({ mends: edits }, 'mender');
  openDocument(document, { name: 'test.json', saved: document });
  const whole: NodeReport = { state: 'ready', says: '', thumbnail: { layers: [], lines: [] }, problems: [], cautions: [], missing: [], milliseconds: 1, ...report };
  editor.setState({ shapes: new Map([['mender', MENDER]]), reports: new Map([['one', whole]]) });
  return { ...render(<NodeForm node="one" />), user: userEvent.setup({ delay: null }) };
}

afterEach(() => {
  cleanup();
  editor.setState(initialState);
});

const edits = () => present().nodes[0]!.params.mends as readonly Edit[];
const entries = () => screen.getAllByRole('listitem');

describe('the list of edits', () => {
  it('numbers each, says its act and where in percent, and takes one back as one step', async () => {
    const { user } = show([SNIP, TIE, DROP]);
    expect(entries().map(({ textContent }) => textContent)).toEqual([
      '1Snip at 41.2, 11.3 %Take back', '2Tie from 0, 0 to 100, 50 %Take back', '3Drop at -5, 20 %Take back',
    ]);
    await user.click(screen.getByRole('button', { name: 'Take back edit 2' }));
    expect(edits()).toEqual([SNIP, DROP]);
    undoStep();
    expect(edits()).toEqual([SNIP, TIE, DROP]);
  });

  it('moves the chosen one earlier and later, not beyond the ends', async () => {
    const { user } = show([SNIP, TIE, DROP]);
    await user.click(within(entries()[1]!).getByRole('button', { name: /Tie/ }));
    await user.click(screen.getByRole('button', { name: 'Do 2 earlier' }));
    expect(edits()).toEqual([TIE, SNIP, DROP]);
    await user.click(screen.getByRole('button', { name: 'Do 1 earlier' }));
    expect(edits()).toEqual([TIE, SNIP, DROP]);
    await user.click(screen.getByRole('button', { name: 'Do 1 later' }));
    await user.click(screen.getByRole('button', { name: 'Do 2 later' }));
    expect(edits()).toEqual([SNIP, DROP, TIE]);
  });

  it('takes all back', async () => {
    const { user } = show([SNIP, TIE]);
    await user.click(screen.getByRole('button', { name: 'Take all of Mends back' }));
    expect(present().nodes[0]!.params).toEqual({});
    expect(screen.getByText('no edits')).toBeTruthy();
    expect(screen.queryByRole('button', { name: /Take all/ })).toBeNull();
  });

  it('has the sheet mark what is pointed at or has the focus, and go there when pressed', async () => {
    const { user, unmount } = show([SNIP, TIE]);
    await user.hover(entries()[1]!);
    expect(editor.getState().pointed).toEqual({ node: 'one', param: 'mends', index: 1, goes: false });
    await user.unhover(entries()[1]!);
    expect(editor.getState().pointed).toBeUndefined();
    await user.click(within(entries()[0]!).getByRole('button', { name: /Snip/ }));
    expect(editor.getState()).toMatchObject({ shown: 'one', pointed: { index: 0, goes: true } });
    unmount();
    expect(editor.getState().pointed).toBeUndefined();
  });

  it('tells a caution at the entry its place names, and at the field what names none', () => {
    const caution = (place: string, found: string) => ({ place, expected: 'a stroke', found, advice: 'Take it back.' });
    show([SNIP, TIE], { cautions: [caution('mends 2', 'none near'), caution('mends', 'too many'), caution('mends 9', 'one that is gone')] });
    expect(within(entries()[1]!).getByText(/found none near/)).toBeTruthy();
    expect(entries()[0]!.textContent).not.toContain('Caution');
    expect(screen.getByText(/found too many/).closest('li')).toBeNull();
    expect(screen.getByText(/found one that is gone/).closest('li')).toBeNull();
  });

  it('shows what it does not know by its name, and says what is wrong with it', () => {
    show([{ act: 'polish', places: [] }]);
    expect(entries()[0]!.textContent).toContain('polish');
    expect(screen.getByText(/Stops here/)).toBeTruthy();
  });

  it('shows fifty at a time', async () => {
    const { user } = show(Array.from({ length: 120 }, () => SNIP));
    expect(entries()).toHaveLength(50);
    await user.click(screen.getByRole('button', { name: 'Later edits' }));
    expect(entries()[0]!.textContent).toMatch(/^51Snip/);
    expect(screen.getByText('51 to 100 of 120')).toBeTruthy();
  });

  it('is written as text and read again, a line for each', async () => {
    const { user } = show([SNIP, TIE]);
    await user.click(screen.getByRole('button', { name: 'As text' }));
    const area = screen.getByRole<HTMLTextAreaElement>('textbox');
    expect(area.value).toBe('snip 0.412,0.1131\ntie 0,0 1,0.5');
    await user.clear(area);
    await user.type(area, 'drop 0.5');
    await user.click(screen.getByRole('button', { name: 'Take these edits' }));
    expect(screen.getByRole('alert').textContent).toMatch(/Expected edits as act/);
    await user.clear(area);
    await user.type(area, 'tie 0,0 1,0.5\ndrop -0.05,0.2');
    await user.click(screen.getByRole('button', { name: 'Take these edits' }));
    expect(edits()).toEqual([TIE, DROP]);
  });

  it('has no fault an accessibility checker finds', async () => {
    const { container } = show([SNIP, TIE]);
    const { violations } = await axe.run(container, { rules: { 'color-contrast': { enabled: false } } });
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join()}`)).toEqual([]);
  });
});

describe('the words of edits', () => {
  it('are read back as they were written', () => {
    const all = [SNIP, TIE, DROP];
    expect(readEdits(MENDS, editsLines(all))).toEqual({ ok: true, value: all });
    expect(readEdits(MENDS, 'snip 0.5,0.5\r\n\r\n')).toEqual({ ok: true, value: [{ act: 'snip', places: [{ x: 0.5, y: 0.5 }] }] });
    expect(readEdits(MENDS, 'melt 0,0').ok).toBe(false);
  });

  it('tell at most three places, and how many more', () => {
    expect(placesWords([])).toBe('');
    expect(placesWords(Array.from({ length: 5 }, (_, i) => ({ x: i / 10, y: 0 })))).toBe('at 0, 0; 10, 0; 20, 0 % and 2 more');
  });

  it('name an entry only by the whole name of the parameter and a number from 1', () => {
    expect(['mends 1', 'mends 12', 'mends', 'mends 0', 'mendsx 1', 'mends x', undefined].map((place) => entryNamed('mends', place))).toEqual([0, 11, undefined, undefined, undefined, undefined, undefined]);
  });
});
