// @vitest-environment happy-dom
import { afterEach, describe, expect, it } from 'vitest';
import { allCommands } from '../../../src/editor/app/commands.ts';
import { doubledKeys, parseKeys } from '../../../src/editor/app/keys.ts';
import { runCommand } from '../../../src/editor/app/run.ts';
import { layout } from '../../../src/editor/app/layout.ts';
import { type Command } from '../../../src/editor/state/commands.ts';
import { editor, initialState } from '../../../src/editor/state/editor.ts';

const told = () => editor.getState().notices.map(({ kind, says }) => [kind, says]);
const make = (parts: Partial<Command>): Command => ({ id: 'x', label: 'Turn it', group: 'Edit', run: () => {}, ...parts });
afterEach(() => { editor.setState(initialState); layout.setState(layout.getInitialState()); });

describe('all commands', () => {
  it('have ids of their own, labels, and keys that no other claims', () => {
    expect(new Set(allCommands.map(({ id }) => id)).size).toBe(allCommands.length);
    expect(allCommands.filter(({ label }) => label.trim() === '')).toEqual([]);
    expect(doubledKeys(allCommands)).toEqual([]);
  });

  it('name their keys as keyboards do', () => {
    const known = /^(?:.|f\d{1,2}|escape|enter|delete|backspace|insert|tab|home|end|pageup|pagedown|arrow(?:up|down|left|right))$/;
    expect(allCommands.flatMap(({ keys = [] }) => keys).filter((text) => !known.test(parseKeys(text).key))).toEqual([]);
  });

  it('say on an empty page whether they can be done, and what stands in the way', () => {
    for (const { refusal, labelNow } of allCommands) {
      expect(refusal?.() ?? 'possible').not.toBe('');
      expect(labelNow?.() ?? 'as always').not.toBe('');
    }
  });

  it('hide the checks and show them again', () => {
    const checks = allCommands.find(({ id }) => id === 'view-checks')!;
    expect(checks.labelNow!()).toBe('Hide the checks');
    runCommand(checks);
    expect(layout.getState().checksShown).toBe(false);
    layout.setState({ rooms: 'bench' });
    runCommand(checks);
    expect(layout.getState()).toMatchObject({ rooms: 'both', checksShown: true });
  });
});

describe('running a command', () => {
  it('that cannot be done says why, once', () => {
    let runs = 0;
    const refused = make({ refusal: () => 'Nothing to turn: choose a card first.', run: () => { runs += 1; } });
    runCommand(refused);
    runCommand(refused);
    expect(runs).toBe(0);
    expect(told()).toEqual([['caution', 'Nothing to turn: choose a card first.']]);
  });

  it('that breaks, at once or later, tells what it was and why', async () => {
    runCommand(make({ run: () => { throw new Error('no hands'); } }));
    runCommand(make({ run: () => Promise.reject(Object.assign(new Error(), { expected: 'a file', found: 'none', advice: 'Choose one.' })) }));
    await Promise.resolve();
    await Promise.resolve();
    expect(told()).toEqual([['failed', '“Turn it” stopped: no hands'], ['failed', '“Turn it” stopped: expected a file, found none. Choose one.']]);
  });
});
