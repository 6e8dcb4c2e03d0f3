// @vitest-environment happy-dom
import { act, cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { DropHint } from '../../../src/editor/files/DropHint.tsx';
import { FileDialogs } from '../../../src/editor/files/FileDialogs.tsx';
import { fileValue, putArtwork } from '../../../src/editor/files/artwork.ts';
import { takeDrops, takeFiles } from '../../../src/editor/files/drop.ts';
import { openNew, openRecipe } from '../../../src/editor/files/open.ts';
import { edit, editor, present, undoStep } from '../../../src/editor/state/editor.ts';
import { LIMITS } from '../../../src/runtime/index.ts';
import { file, freshPage, notices, shipped } from './desk.ts';

const SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm"/>';
const artworkOf = (id: string) => present().nodes.find((node) => node.id === id)?.params['artwork'];
const secondStep = () => { edit('add', ({ nodes }) => void nodes.push({ id: 'other', type: 'import-outlines', position: [0, 0], params: {} })); };

beforeEach(async () => {
  freshPage();
  await openRecipe('drawn-strokes');
});
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

describe('a drawing', () => {
  it('goes into the only step that takes it, chosen, as one step to undo', async () => {
    const before = present();
    await takeFiles([file('new.svg', SVG)], {});
    expect(artworkOf('artwork')).toEqual({ name: 'new.svg', text: SVG });
    expect(editor.getState().chosen).toEqual(['artwork']);
    undoStep();
    expect(present()).toEqual(before);
  });

  it('goes into the step it is dropped on', async () => {
    secondStep();
    await takeFiles([file('NEW.SVG', SVG)], { on: 'other' });
    expect(artworkOf('other') ?? present().nodes.at(-1)!.params).toMatchObject({ name: 'NEW.SVG' });
  });

  it('asks where there are several steps, and goes into the one that is chosen', async () => {
    secondStep();
    const before = artworkOf('artwork');
    await takeFiles([file('new.svg', SVG)], { on: 'groove' });
    render(<FileDialogs />);
    expect(screen.getByRole('heading').textContent).toBe('Which step takes new.svg?');
    await userEvent.setup({ delay: null }).click(screen.getByRole('button', { name: 'Pen drawing' }));
    expect(artworkOf('artwork')).not.toEqual(before);
    expect(Object.keys(present().nodes.at(-1)!.params)).toEqual([]);
  });

  it('gets a step of its own where none takes it, as one step to undo', async () => {
    openNew();
    await takeFiles([file('new.svg', SVG)], {});
    const [node, ...others] = present().nodes;
    expect(others).toEqual([]);
    expect(Object.values(node!.params)).toEqual([{ name: 'new.svg', text: SVG }]);
    undoStep();
    expect(present().nodes).toEqual([]);
  });

  it('that is no text is kept byte for byte', () => {
    const bytes = Uint8Array.from({ length: 70_000 }, (_, i) => (i * 7919) % 256);
    const value = fileValue('a.svg', bytes.buffer);
    expect('base64' in value && Uint8Array.from(atob(value.base64), (character) => character.charCodeAt(0))).toEqual(bytes);
    expect(fileValue('a.svg', new TextEncoder().encode('\uFEFF<svg/>').buffer)).toEqual({ name: 'a.svg', text: '\uFEFF<svg/>' });
  });
});

describe('other files', () => {
  it('that are recipes are opened', async () => {
    await takeFiles([file('mine.json', shipped.replace('Drawn strokes', 'Mine'))], { on: 'artwork' });
    expect(present().title).toBe('Mine');
  });

  it.each([
    ['several', [file('a.svg', SVG), file('b.svg', SVG)], /^2 files came at once\. Drop them one by one/],
    ['of a kind no step takes', [file('photo.gif', 'x')], /^No step takes photo\.gif\. Drop a recipe \(\.json\) or a file ending in .*\.svg/],
    ['too large to be saved', [Object.defineProperty(file('big.svg', SVG), 'size', { value: LIMITS.characters })], /^big\.svg has 67 MB; at most 34 MB/],
  ])('%s are refused in a sentence, and nothing changes', async (_name, dropped, says) => {
    const before = present();
    await takeFiles(dropped, {});
    expect(notices().at(-1)).toMatch(says);
    expect(present()).toBe(before);
  });

  it('of a kind no step takes, put by other ways, are refused too', () => {
    putArtwork({ name: 'photo.gif', text: '' });
    expect(notices().at(-1)).toMatch(/^No step takes photo\.gif/);
  });
});

describe('dragging over the page', () => {
  const transfer = (...names: string[]) => ({ types: names.length > 0 ? ['Files'] : ['text/plain'], items: [], files: names.map((name) => file(name, SVG)), dropEffect: 'none' });
  function fire(name: string, target: EventTarget, more: object) {
    const event = Object.assign(new Event(name, { bubbles: true, cancelable: true }), more);
    act(() => { target.dispatchEvent(event); });
    return event.defaultPrevented;
  }

  it('shows what letting go does, and over which card, until the drag ends', () => {
    render(<><DropHint /><div data-node="artwork"><b>card</b></div></>);
    const end = takeDrops();
    expect(fire('dragover', screen.getByText('card'), { dataTransfer: transfer('a.svg') })).toBe(true);
    expect(screen.getByRole('status').textContent).toMatch(/^Let go over “Pen drawing”/);
    fire('dragleave', document.body, { relatedTarget: null });
    expect(screen.queryByRole('status')).toBeNull();
    end();
  });

  it('takes what is dropped on a card', async () => {
    secondStep();
    render(<div data-node="artwork">card</div>);
    const end = takeDrops();
    expect(fire('drop', screen.getByText('card'), { dataTransfer: transfer('dropped.svg') })).toBe(true);
    await vi.waitFor(() => { expect(artworkOf('artwork')).toMatchObject({ name: 'dropped.svg' }); });
    end();
  });

  it('leaves alone what is no file', () => {
    const end = takeDrops();
    expect(fire('dragover', document.body, { dataTransfer: transfer() })).toBe(false);
    expect(fire('drop', document.body, { dataTransfer: transfer() })).toBe(false);
    end();
  });

  it('takes a drawing pasted as text, but not into a field', async () => {
    render(<input aria-label="field" />);
    const end = takeDrops();
    const clipboardData = { files: [], getData: () => `\n${SVG}` };
    expect(fire('paste', screen.getByLabelText('field'), { clipboardData })).toBe(false);
    expect(fire('paste', document.body, { clipboardData: { files: [], getData: () => 'words' } })).toBe(false);
    expect(fire('paste', document.body, { clipboardData })).toBe(true);
    await vi.waitFor(() => { expect(artworkOf('artwork')).toEqual({ name: 'pasted.svg', text: SVG }); });
    end();
  });
});
