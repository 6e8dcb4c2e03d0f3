// @vitest-environment happy-dom
import { afterEach, describe, expect, it } from 'vitest';
import { type KeyPress, commandOf, doubledKeys, fits, mayAct, parseKeys, shownKeys } from '../../../src/editor/app/keys.ts';
import type { Command } from '../../../src/editor/state/commands.ts';

const press = (key: string, held: Partial<KeyPress> = {}): KeyPress =>
  ({ key, code: '', ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, target: null, ...held });
const fitting = (text: string, key: KeyPress) => fits(parseKeys(text), key);
const allowed = (text: string, target: Element | null) => mayAct(parseKeys(text), target);
const command = (id: string, keys: readonly string[], group: Command['group'] = 'Edit'): Command => ({ id, label: id, group, keys, run: () => {} });

function page(html: string): Element {
  document.body.innerHTML = html;
  return document.querySelector('#it')!;
}
afterEach(() => { document.body.innerHTML = ''; });

describe('a key', () => {
  it('is read with what is held down, plus and space among the keys', () => {
    expect(parseKeys('Mod+Shift+Z')).toEqual({ mod: true, shift: true, alt: false, key: 'z' });
    expect(parseKeys('Mod++')).toEqual({ mod: true, shift: false, alt: false, key: '+' });
    expect(parseKeys('+')).toEqual({ mod: false, shift: false, alt: false, key: '+' });
    expect(parseKeys('Space').key).toBe(' ');
  });

  it('fits with Control and with Command, and not with more held down than asked', () => {
    expect(fitting('Mod+Z', press('z', { ctrlKey: true }))).toBe(true);
    expect(fitting('Mod+Z', press('z', { metaKey: true }))).toBe(true);
    expect(fitting('Mod+Z', press('Z', { ctrlKey: true, shiftKey: true }))).toBe(false);
    expect(fitting('Z', press('z', { ctrlKey: true }))).toBe(false);
    expect(fitting('Z', press('z', { altKey: true }))).toBe(false);
    expect(fitting('Mod+Z', press('z'))).toBe(false);
  });

  it('that is a sign fits whether the keyboard needs Shift or the third level for it', () => {
    expect(fitting('?', press('?', { shiftKey: true }))).toBe(true);
    expect(fitting('?', press('?'))).toBe(true);
    expect(fitting('[', press('[', { ctrlKey: true, altKey: true, getModifierState: (name) => name === 'AltGraph' }))).toBe(true);
  });

  it('fits by its place where the layout gives no Latin letter, or Alt changes the digit', () => {
    expect(fitting('Mod+Z', press('я', { ctrlKey: true, code: 'KeyZ' }))).toBe(true);
    expect(fitting('Alt+1', press('¡', { altKey: true, code: 'Digit1' }))).toBe(true);
    expect(fitting('Shift+1', press('!', { shiftKey: true, code: 'Digit1' }))).toBe(true);
    expect(fitting('Mod+Z', press('y', { ctrlKey: true, code: 'KeyZ' }))).toBe(false);
  });

  it('is shown as it is printed on the keyboard', () => {
    expect(shownKeys('Mod+Shift+Z', false)).toEqual(['Ctrl', 'Shift', 'Z']);
    expect(shownKeys('Mod+ArrowUp', true)).toEqual(['Command', '↑']);
    expect(shownKeys('F1', false)).toEqual(['F1']);
  });
});

describe('keys', () => {
  it('of one character act on bench and sheet only', () => {
    expect(allowed('D', page('<div data-room="bench"><div id="it"></div></div>'))).toBe(true);
    expect(allowed('D', page('<div data-room="sheet" id="it"></div>'))).toBe(true);
    expect(allowed('D', page('<div data-room="checks" id="it"></div>'))).toBe(false);
    expect(allowed('Delete', page('<div data-room="checks" id="it"></div>'))).toBe(false);
    expect(allowed('D', document.body)).toBe(false);
  });

  it('leave a field its own, and what edits it', () => {
    const field = page('<div data-room="bench"><input id="it"></div>');
    for (const text of ['D', '?', 'Delete', 'ArrowLeft', 'Mod+Z', 'Mod+C', 'Mod+A', 'Alt+1', 'Escape']) expect([text, allowed(text, field)]).toEqual([text, false]);
    expect(allowed('Mod+S', field)).toBe(true);
    expect(allowed('F1', field)).toBe(true);
  });

  it('leave a slider its arrows and a button its Enter, not the rest', () => {
    const slider = page('<div data-room="bench"><input type="range" id="it"></div>');
    expect(allowed('ArrowLeft', slider)).toBe(false);
    expect(allowed('Mod+Z', slider)).toBe(true);
    expect(allowed('D', slider)).toBe(true);
    const button = page('<div data-room="bench"><button id="it"></button></div>');
    expect(allowed('Enter', button)).toBe(false);
    expect(allowed('ArrowLeft', button)).toBe(true);
  });

  it('copy steps on the bench and where nothing has the focus, text elsewhere', () => {
    expect(allowed('Mod+C', page('<div data-room="bench" id="it"></div>'))).toBe(true);
    expect(allowed('Mod+C', document.body)).toBe(true);
    expect(allowed('Mod+C', page('<div data-room="checks" id="it"></div>'))).toBe(false);
  });

  it('mean the sheet’s command on the sheet, the other elsewhere', () => {
    const commands = [command('bench', ['0'], 'View'), command('sheet', ['0'], 'Sheet'), command('only', ['T'], 'Sheet')];
    const on = (room: string) => page(`<div data-room="${room}" id="it"></div>`);
    expect(commandOf(commands, press('0', { target: on('sheet') }))?.id).toBe('sheet');
    expect(commandOf(commands, press('0', { target: on('bench') }))?.id).toBe('bench');
    expect(commandOf(commands, press('t', { target: on('bench') }))?.id).toBe('only');
    expect(commandOf(commands, press('x', { target: on('bench') }))).toBeUndefined();
  });

  it('claimed twice in the same place are found', () => {
    expect(doubledKeys([command('a', ['Mod+Z']), command('b', ['Mod+Z'])])).toHaveLength(1);
    expect(doubledKeys([command('a', ['?']), command('b', ['Shift+?'])])).toHaveLength(1);
    expect(doubledKeys([command('a', ['0'], 'View'), command('b', ['0'], 'Sheet')])).toEqual([]);
    expect(doubledKeys([command('a', ['Mod+0'], 'View'), command('b', ['Mod+0'], 'Sheet')])).toHaveLength(1);
    expect(doubledKeys([command('a', ['Z', 'Z'])])).toEqual([]);
  });
});
