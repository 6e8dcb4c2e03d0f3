import { describe, expect, it } from 'vitest';
import { CHECKS_WIDTH, INITIAL_LAYOUT, SPLIT, arrange, layout, readLayout, seesChecks } from '../../../src/editor/app/layout.ts';
import { remember, remembered } from '../../../src/editor/app/storage.ts';
import { valueAfterKey } from '../../../src/editor/app/Divider.tsx';

describe('a layout', () => {
  it('that was kept is read back as it was', () => {
    const kept = { rooms: 'bench', split: 30, checksWidth: 420, checksShown: false, checksOpen: true };
    expect(readLayout(JSON.stringify(kept))).toEqual(kept);
  });

  it.each([null, '', 'no json', 'null', '[]', '7', '{"rooms":"cellar","split":"wide","checksWidth":null}'])('kept as %j begins afresh', (text) => {
    expect(readLayout(text)).toEqual(INITIAL_LAYOUT);
  });

  it('never leaves its limits', () => {
    expect(readLayout('{"split":-5,"checksWidth":99999}')).toMatchObject({ split: SPLIT.min, checksWidth: CHECKS_WIDTH.max });
    arrange({ split: Number.NaN, checksWidth: -1 });
    expect(layout.getState()).toMatchObject({ split: SPLIT.min, checksWidth: CHECKS_WIDTH.min });
    arrange(INITIAL_LAYOUT);
  });

  it('shows the checks beside the sheet, or unfolded below it, never on the bench alone', () => {
    expect(seesChecks(INITIAL_LAYOUT, false)).toBe(true);
    expect(seesChecks(INITIAL_LAYOUT, true)).toBe(false);
    expect(seesChecks({ ...INITIAL_LAYOUT, checksOpen: true }, true)).toBe(true);
    expect(seesChecks({ ...INITIAL_LAYOUT, rooms: 'bench' }, false)).toBe(false);
  });
});

describe('storage that fails', () => {
  it('is as if nothing was kept', () => {
    const broken = { getItem: () => { throw new Error('refused'); }, setItem: () => { throw new Error('full'); } };
    const before = Object.getOwnPropertyDescriptor(globalThis, 'localStorage');
    Object.defineProperty(globalThis, 'localStorage', { value: broken, configurable: true });
    expect(remembered('x')).toBeNull();
    expect(() => remember('x', '1')).not.toThrow();
    expect(() => arrange({ split: 40 })).not.toThrow();
    if (before) Object.defineProperty(globalThis, 'localStorage', before);
    arrange(INITIAL_LAYOUT);
  });
});

describe('the divider’s keys', () => {
  const rows = { divides: 'rows' as const, value: 50, range: SPLIT, step: 5 };
  const columns = { divides: 'columns' as const, value: 300, range: CHECKS_WIDTH, step: 20, sense: -1 as const };

  it('move it along its way, to its ends, and no further', () => {
    expect(valueAfterKey('ArrowDown', rows)).toBe(55);
    expect(valueAfterKey('ArrowUp', { ...rows, value: SPLIT.min })).toBe(SPLIT.min);
    expect(valueAfterKey('Home', rows)).toBe(SPLIT.min);
    expect(valueAfterKey('End', rows)).toBe(SPLIT.max);
    expect(valueAfterKey('ArrowLeft', rows)).toBeUndefined();
    expect(valueAfterKey('Tab', rows)).toBeUndefined();
  });

  it('move the line the way the arrow points where the value grows to the left', () => {
    expect(valueAfterKey('ArrowLeft', columns)).toBe(320);
    expect(valueAfterKey('ArrowRight', columns)).toBe(280);
    expect(valueAfterKey('Home', columns)).toBe(CHECKS_WIDTH.max);
  });
});
