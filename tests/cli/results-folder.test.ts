import * as nodeFs from 'node:fs';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { faultLine } from '../../src/cli/fault.ts';
import { beginResults, type FileSystem, tryResults } from '../../src/cli/results-folder.ts';
import { scratch } from '../support/command-line.ts';

function systemError(code: string): Error {
  return Object.assign(new Error(`${code}: made up by a test`), { code });
}

/** A file system whose named call fails from its `after`th use on. */
function failing(name: keyof FileSystem, code: string, after = 1): FileSystem {
  let uses = 0;
  const real = nodeFs[name] as (...args: unknown[]) => unknown;
  return { ...nodeFs, [name]: (...args: unknown[]) => {
    if (++uses >= after) throw systemError(code);
    return real(...args);
  } };
}

function begun(out: string, fs?: FileSystem) {
  const folder = beginResults(out, fs);
  if (!folder.ok) throw new Error(folder.faults.map(faultLine).join());
  return folder.value;
}

const FILES = [{ path: 'drawing.svg', text: '<svg/>' }, { path: 'programs/one.ngc', text: 'M2\n' }, { path: 'report.json', text: '{}\n' }];

describe('a results folder', () => {
  it('appears whole, under its own name, and only when it is committed', () => {
    const parent = scratch();
    const folder = begun(join(parent, 'out'));
    for (const file of FILES) expect(folder.write(file).ok).toBe(true);
    expect(existsSync(join(parent, 'out'))).toBe(false);
    expect(folder.commit().ok).toBe(true);
    expect(readdirSync(parent)).toEqual(['out']);
    for (const { path, text } of FILES) expect(readFileSync(join(parent, 'out', path), 'utf8')).toBe(text);
  });

  it('holds bytes that are no text as they are', () => {
    const parent = scratch();
    const folder = begun(join(parent, 'out'));
    folder.write({ path: 'sheet.pdf', base64: 'JVBERi0xLjcKAP+A' });
    folder.commit();
    expect([...readFileSync(join(parent, 'out', 'sheet.pdf'))]).toEqual([37, 80, 68, 70, 45, 49, 46, 55, 10, 0, 255, 128]);
  });

  it('makes the folders above it, with the usual permissions', () => {
    const parent = scratch();
    const folder = begun(join(parent, 'a/b/out'));
    folder.write(FILES[0]!);
    expect(readdirSync(parent)).not.toContain('a');
    expect(folder.commit().ok).toBe(true);
    const usual = join(parent, 'usual');
    mkdirSync(usual);
    expect(statSync(join(parent, 'a/b/out')).mode).toBe(statSync(usual).mode);
  });

  it('takes the place of an empty folder', () => {
    const parent = scratch();
    mkdirSync(join(parent, 'out'));
    const folder = begun(join(parent, 'out'));
    folder.write(FILES[0]!);
    expect(folder.commit().ok).toBe(true);
    expect(readdirSync(join(parent, 'out'))).toEqual(['drawing.svg']);
  });

  it('leaves a folder with something in it, and a file, as they are', () => {
    const parent = scratch();
    mkdirSync(join(parent, 'full'));
    writeFileSync(join(parent, 'full/mine.txt'), 'mine');
    writeFileSync(join(parent, 'file'), 'mine');
    for (const [name, found] of [['full', 'a folder with something in it'], ['file', 'a file']] as const)
      expect(beginResults(join(parent, name))).toMatchObject({ ok: false, faults: [{ found }] });
    expect(readdirSync(parent)).toEqual(['file', 'full']);
    expect(readFileSync(join(parent, 'full/mine.txt'), 'utf8')).toBe('mine');
  });

  it('refuses the folder one is in: it would be replaced under one\'s feet', () => {
    expect(beginResults('.', { ...nodeFs, readdirSync: (() => []) as unknown as typeof nodeFs.readdirSync }))
      .toMatchObject({ ok: false, faults: [{ found: 'the folder you are in' }] });
  });

  it('keeps what another run put there meanwhile', () => {
    const parent = scratch();
    const folder = begun(join(parent, 'out'));
    folder.write(FILES[0]!);
    mkdirSync(join(parent, 'out'));
    writeFileSync(join(parent, 'out/theirs.txt'), 'theirs');
    expect(folder.commit()).toMatchObject({ ok: false, faults: [{ found: 'a folder that is not empty' }] });
    expect(readdirSync(parent)).toEqual(['out']);
    expect(readdirSync(join(parent, 'out'))).toEqual(['theirs.txt']);
  });

  it('can be tried without leaving anything', () => {
    const parent = scratch();
    expect(tryResults(join(parent, 'a/out')).ok).toBe(true);
    expect(readdirSync(parent)).toEqual([]);
  });

  it.each([
    ['mkdirSync', 'EROFS', 'a read-only file system'],
    ['mkdirSync', 'EACCES', 'no permission'],
  ] as const)('says before any work that %s would meet %s', (name, code, found) => {
    const parent = scratch();
    expect(tryResults(join(parent, 'out'), failing(name, code))).toMatchObject({ ok: false, faults: [{ found }] });
    expect(readdirSync(parent)).toEqual([]);
  });
});

describe('when the disk fails in the middle', () => {
  it.each([
    ['writeFileSync', 'ENOSPC', 'no space left on the disk'],
    ['writeFileSync', 'EDQUOT', 'no space left in the quota'],
    ['fsyncSync', 'ENOSPC', 'no space left on the disk'],
    ['fsyncSync', 'EIO', 'a disk that reported an error'],
    ['openSync', 'ENOSPC', 'no space left on the disk'],
    ['renameSync', 'EBUSY', 'a folder that is in use'],
  ] as const)('%s meeting %s leaves nothing, and says so in one line', (name, code, found) => {
    const parent = scratch();
    const folder = begun(join(parent, 'a/b/out'), failing(name, code, name === 'renameSync' ? 1 : 2));
    const outcomes = [...FILES.map(folder.write), folder.commit()];
    const fault = outcomes.find(({ ok }) => !ok);
    expect(fault).toMatchObject({ ok: false, faults: [{ found }] });
    expect(readdirSync(parent)).toEqual([]);
  });

  it('a mistake of the program clears up too, and stays an exception', () => {
    const parent = scratch();
    for (const path of ['../escape.txt', '/etc/escape', 'a//b', './a', 'a/..', 'a\\b', '']) {
      const folder = begun(join(parent, 'out'));
      expect(() => folder.write({ path, text: '' })).toThrow(RangeError);
    }
    expect(readdirSync(parent)).toEqual([]);
  });
});
