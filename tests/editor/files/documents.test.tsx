// @vitest-environment happy-dom
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { FileDialogs } from '../../../src/editor/files/FileDialogs.tsx';
import { openFile, openNew, openRecipe, unlessUnsaved } from '../../../src/editor/files/open.ts';
import { recentDocuments, recentText } from '../../../src/editor/files/recent.ts';
import { listRecipes } from '../../../src/editor/files/recipes.ts';
import { save, saveAs } from '../../../src/editor/files/save.ts';
import { files } from '../../../src/editor/files/state.ts';
import { edit, editor, hasUnsaved, present } from '../../../src/editor/state/editor.ts';
import { writeGraph } from '../../../src/runtime/index.ts';
import { type Downloaded, diskPlace, file, freshPage, notices, shipped } from './desk.ts';

let downloads: Downloaded[];
beforeEach(() => { ({ downloads } = freshPage()); });
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const rename = (title: string) => { edit('rename', (draft) => { draft.title = title; }); };
const unsaved = () => hasUnsaved(editor.getState());
const show = () => { render(<FileDialogs />); return userEvent.setup({ delay: null }); };
const press = (name: string | RegExp) => userEvent.setup({ delay: null }).click(screen.getByRole('button', { name }));

describe('opening', () => {
  it('shows a shipped recipe as it is shipped, with nothing to save', async () => {
    await openRecipe('drawn-strokes');
    expect(writeGraph(present())).toBe(shipped);
    expect({ unsaved: unsaved(), name: editor.getState().file.name }).toEqual({ unsaved: false, name: 'drawn-strokes.json' });
  });

  it('lists every shipped recipe with its title and notes', async () => {
    const recipes = await listRecipes();
    expect(recipes.find(({ id }) => id === 'drawn-strokes')).toMatchObject({ title: 'Drawn strokes', notes: expect.stringContaining('pen drawing') as string });
  });

  it('says when a recipe cannot be loaded, and leaves what is open', async () => {
    const before = present();
    await openRecipe('no-such-recipe');
    expect(notices()[0]).toContain('no-such-recipe');
    expect(present()).toBe(before);
  });

  it('takes a file from the disk with the place it is saved to', async () => {
    const handle = diskPlace('mine.json', shipped);
    await openFile(await handle.getFile(), handle);
    expect(editor.getState().file).toMatchObject({ name: 'mine.json', handle });
    expect(unsaved()).toBe(false);
  });

  it.each([
    ['no JSON', 'hello', /line 1, column 1/], ['another JSON', '{"a": [1]}', /format/], ['an empty file', '', /line 1/],
    ['a later version', shipped.replace('"version": 1', '"version": 7'), /expected at most 1, found 7\. Open it with a newer release/],
  ])('refuses %s by a list of what is wrong, and leaves what is open', async (_name, text, says) => {
    await openRecipe('drawn-strokes');
    const before = present();
    await openFile(file('odd.json', text));
    show();
    expect(screen.getByRole('heading').textContent).toBe('odd.json was not opened');
    expect(screen.getByRole('list').textContent).toMatch(says);
    expect(screen.queryByRole('button', { name: /what can be read/ })).toBeNull();
    expect(present()).toBe(before);
  });
});

describe('unsaved work', () => {
  const opening = async () => {
    await openRecipe('drawn-strokes');
    rename('Mine');
    show();
    await unlessUnsaved(openNew);
    await screen.findByText('Unsaved work');
  };

  it('is no hindrance while there is none', async () => {
    await openRecipe('drawn-strokes');
    await unlessUnsaved(openNew);
    expect(present().nodes).toEqual([]);
  });

  it('stays when the person stays', async () => {
    await opening();
    await press('Stay');
    expect(present().title).toBe('Mine');
    expect(files.getState().dialog).toBeUndefined();
  });

  it('is saved first when the person wants that', async () => {
    await opening();
    await press('Save');
    await vi.waitFor(() => { expect(present().nodes).toEqual([]); });
    expect(await downloads[0]!.text()).toContain('"title": "Mine"');
  });

  it('is kept under Recent when it is left', async () => {
    await opening();
    await press('Open without saving');
    await vi.waitFor(async () => { expect((await recentDocuments())[0]).toMatchObject({ title: 'Mine', unsaved: true }); });
    const [left] = await recentDocuments();
    expect(await recentText(left!)).toContain('"title": "Mine"');
    expect(present().nodes).toEqual([]);
  });

  it('stays when saving is broken off', async () => {
    vi.stubGlobal('showSaveFilePicker', () => Promise.reject(new DOMException('', 'AbortError')));
    await opening();
    await press('Save');
    expect(present().title).toBe('Mine');
    expect(unsaved()).toBe(true);
  });
});

describe('saving', () => {
  it('downloads the text where the browser has no file pickers, named by the title when it had no name', async () => {
    openNew();
    rename('Hörbar: Ärmel/1');
    expect(await save()).toBe(true);
    expect(downloads.map(({ name }) => name)).toEqual(['horbar-armel-1.json']);
    expect(await downloads[0]!.text()).toBe(writeGraph(present()));
    expect(unsaved()).toBe(false);
  });

  it('asks for a place once, then writes there', async () => {
    const place = diskPlace('chosen.json');
    const picker = vi.fn(() => Promise.resolve(place));
    vi.stubGlobal('showSaveFilePicker', picker);
    await openRecipe('drawn-strokes');
    await saveAs();
    rename('Second');
    await save();
    expect(picker).toHaveBeenCalledTimes(1);
    expect(place.content).toBe(writeGraph(present()));
    expect({ unsaved: unsaved(), name: editor.getState().file.name }).toEqual({ unsaved: false, name: 'chosen.json' });
  });

  it('is undone by nothing but a change: undoing back to what was saved has nothing to save', async () => {
    await openRecipe('drawn-strokes');
    rename('Other');
    expect(unsaved()).toBe(true);
    rename('Drawn strokes');
    expect(unsaved()).toBe(false);
  });

  it('tells when the disk refuses, and the work stays unsaved', async () => {
    const place = diskPlace('full.json');
    place.createWritable = () => Promise.reject(new Error('no space'));
    await openFile(file('full.json', shipped), place);
    rename('Unsaved');
    expect(await save()).toBe(false);
    expect(unsaved()).toBe(true);
    expect(notices().at(-1)).toMatch(/could not be saved.*no space/);
  });

  it('asks for another place when the browser may not write to the first', async () => {
    const place = diskPlace('locked.json', 'as it was');
    place.permission = 'denied';
    const other = diskPlace('other.json');
    vi.stubGlobal('showSaveFilePicker', () => Promise.resolve(other));
    await openFile(file('locked.json', shipped), place);
    rename('Elsewhere');
    expect(await save()).toBe(true);
    expect(place.content).toBe('as it was');
    expect(other.content).toContain('Elsewhere');
  });

  it('gives back on reopening what was saved', async () => {
    await openRecipe('drawn-strokes');
    rename('Round trip');
    const document = present();
    await save();
    openNew();
    await openFile(file('back.json', await downloads[0]!.text()));
    expect(present()).toEqual(document);
  });
});

describe('a damaged file', () => {
  const odd = shipped.replace('"type": "place"', '"type": "glow"');

  it('opens with its problems listed, its text kept, its file left alone', async () => {
    const handle = diskPlace('odd.json', odd);
    await openFile(await handle.getFile(), handle);
    const { file: opened } = editor.getState();
    expect(opened).toMatchObject({ name: 'odd-mended.json', damage: { text: odd } });
    expect(opened.handle).toBeUndefined();
    expect(present().nodes.find(({ id }) => id === 'place')!.type).toBe('glow');
    expect(opened.damage!.problems.map(({ code }) => code)).toContain('unknown-node');
    await save();
    expect(handle.content).toBe(odd);
    expect(downloads[0]!.name).toBe('odd-mended.json');
  });

  it('gives its text back', async () => {
    await openFile(file('odd.json', odd));
    files.setState({ dialog: { kind: 'damage' } });
    show();
    await press('Save the original text');
    expect(downloads[0]!.name).toBe('odd-as-found.json');
    expect(await downloads[0]!.text()).toBe(odd);
  });

  it('that breaks off is opened only when the person wants the part that can be read', async () => {
    await openFile(file('cut.json', shipped.slice(0, 5000)));
    expect(present().nodes).toEqual([]);
    show();
    await press(/^Open what can be read: \d+ steps$/);
    expect(present().nodes.length).toBeGreaterThan(5);
    expect(editor.getState().file.damage!.problems[0]!.code).toBe('not-json');
  });

  it('with bytes that are no text says so', async () => {
    const bytes = new TextEncoder().encode(shipped);
    bytes[shipped.indexOf('Drawn strokes')] = 0xff;
    await openFile(file('bytes.json', bytes));
    expect(editor.getState().file.damage!.problems[0]).toMatchObject({ place: 'the file', expected: 'UTF-8 text' });
  });
});

describe('recent documents', () => {
  it('are the last twelve, the newest first, each file once', async () => {
    for (let i = 0; i < 14; i += 1) await openFile(file(`${String(i)}.json`, shipped));
    await openFile(file('7.json', shipped));
    const last = ['7', '13', '12', '11', '10', '9', '8', '6', '5', '4', '3', '2'].map((name) => `${name}.json`);
    // They are written one after the other, and 7 has been the newest once before.
    await vi.waitFor(async () => { expect((await recentDocuments()).map(({ name }) => name)).toEqual(last); }, 10_000);
  });

  it('can be opened again', async () => {
    await openFile(file('again.json', shipped.replace('Drawn strokes', 'Once more')));
    openNew();
    await vi.waitFor(async () => { expect(await recentDocuments()).toHaveLength(1); });
    files.setState({ dialog: { kind: 'open', first: 'recent' } });
    const user = show();
    await user.click(await screen.findByRole('button', { name: 'Once more' }));
    await vi.waitFor(() => { expect(present().title).toBe('Once more'); });
  });
});
