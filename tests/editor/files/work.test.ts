// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openFirst } from '../../../src/editor/files/start.ts';
import { keep } from '../../../src/editor/files/storage.ts';
import { keepWork, takeWork } from '../../../src/editor/files/work.ts';
import { openFile } from '../../../src/editor/files/open.ts';
import { recentDocuments } from '../../../src/editor/files/recent.ts';
import { edit, editor, hasUnsaved, notify, present } from '../../../src/editor/state/editor.ts';
import { writeGraph } from '../../../src/runtime/index.ts';
import { file, freshPage, notices, samePage, shipped } from './desk.ts';

beforeEach(() => { freshPage(); });
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const rename = (title: string) => { edit('rename', (draft) => { draft.title = title; }); };
/** As when the browser hides or closes the page; killed pages get no such chance and rely on the timer. */
const leave = () => { dispatchEvent(new Event('pagehide')); };
const kept = async () => { await vi.waitFor(async () => { expect((await takeWork())?.title).toBe(present().title); }, { timeout: 5000, interval: 100 }); };

describe('the first document', () => {
  it('is the shipped recipe when nothing was left', async () => {
    await openFirst();
    expect(writeGraph(present())).toBe(shipped);
    expect(notices()).toEqual([]);
  });

  it('is the shipped recipe again when it was only looked at', async () => {
    await openFirst();
    leave();
    expect(await takeWork()).toBeUndefined();
  });

  it('is the unsaved work of a page that was killed, and the page says so', async () => {
    await openFirst();
    rename('Before the crash');
    await kept();
    samePage();
    await openFirst();
    expect(present().title).toBe('Before the crash');
    expect(hasUnsaved(editor.getState())).toBe(true);
    expect(notices()[0]).toMatch(/^Your unsaved work of .* on “Before the crash” is open again/);
    expect(editor.getState().notices[0]!.action!.label).toBe('Open the recipe as shipped instead');
  });

  it('is unsaved work to the last change when the page is closed in time', async () => {
    await openFirst();
    rename('A');
    rename('Last change');
    leave();
    await kept();
  });

  it('keeps the problems and the text of a damaged file', async () => {
    await openFirst();
    await openFile(file('odd.json', shipped.replace('"type": "place"', '"type": "glow"')));
    leave();
    await kept();
    const { damage } = editor.getState().file;
    samePage();
    await openFirst();
    expect(editor.getState().file.damage).toEqual(damage);
    expect(present().nodes.some(({ type }) => type === 'glow')).toBe(true);
  });

  it('is the shipped recipe when what was kept cannot be read', async () => {
    await keep('work:x', { title: '', name: 'x.json', when: 1, text: 'no graph', unsaved: true });
    await openFirst();
    expect(writeGraph(present())).toBe(shipped);
  });
});

describe('several pages', () => {
  const work = (title: string, when: number, unsaved = true) => ({ title, name: `${title}.json`, when, text: shipped.replace('Drawn strokes', title), unsaved });
  const hold = (...held: string[]) => {
    const request = (name: string, _options: LockOptions, use: (lock: object | null) => unknown) => Promise.resolve(use(held.some((id) => name.endsWith(`:${id}`)) ? null : {}));
    vi.stubGlobal('navigator', Object.create(navigator, { locks: { value: { request } } }));
  };

  it('do not take one another’s work', async () => {
    await keep('work:open', work('Open elsewhere', 9));
    hold('open');
    expect(await takeWork()).toBeUndefined();
  });

  it('leave the newest to the next page and put the rest under Recent, if it was unsaved', async () => {
    await keep('work:a', work('Old', 1));
    await keep('work:b', work('New', 3));
    await keep('work:c', work('Saved', 2, false));
    hold();
    expect((await takeWork())!.title).toBe('New');
    expect((await recentDocuments()).map(({ title, unsaved }) => ({ title, unsaved }))).toEqual([{ title: 'Old', unsaved: true }]);
  });

  it('find their own work when they are loaded again, even if another page has newer work', async () => {
    await keep('work:mine', work('Mine', 1));
    await keep('work:other', work('Other', 5));
    sessionStorage.setItem('groovewright-work', 'mine');
    hold('other');
    expect((await takeWork())!.title).toBe('Mine');
  });
});

describe('leaving the page', () => {
  const asks = () => {
    const event = new Event('beforeunload', { cancelable: true });
    dispatchEvent(event);
    return event.defaultPrevented;
  };

  it('asks only while there is something to lose', async () => {
    await openFirst();
    expect(asks()).toBe(false);
    rename('Changed');
    expect(asks()).toBe(true);
  });
});

describe('a browser that keeps nothing', () => {
  it('is told once, and the page works on', async () => {
    vi.stubGlobal('indexedDB', { open: () => { throw new DOMException('denied', 'SecurityError'); } });
    await openFirst();
    const stop = keepWork();
    rename('One');
    leave();
    rename('Two');
    leave();
    await vi.waitFor(() => { expect(notices().filter((says) => says.includes('keeps nothing'))).toHaveLength(1); });
    notify({ kind: 'done', says: 'still here' });
    expect(present().title).toBe('Two');
    stop();
  });

  it('that is full is told as full', async () => {
    vi.stubGlobal('indexedDB', { open: () => { throw new DOMException('full', 'QuotaExceededError'); } });
    expect(await keep('x', 1)).toBe(false);
    expect(notices()[0]).toContain('no room left');
  });
});
