import type { Command } from '../state/commands.ts';

/** A key with what is held down with it, as a command names it: `Mod+Shift+Z`, `Alt+1`, `?`, `Space`. */
export interface Keys {
  /** Control, or Command where that is usual. */
  readonly mod: boolean;
  readonly shift: boolean;
  readonly alt: boolean;
  /** In lower case: `z`, `arrowup`, `f1`, ` `. */
  readonly key: string;
}

/** The part of a keyboard event that is looked at. */
export type KeyPress = Pick<KeyboardEvent, 'key' | 'code' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey' | 'target'> & {
  readonly getModifierState?: (name: string) => boolean;
};

export function parseKeys(text: string): Keys {
  const [held = ''] = /^(?:(?:Mod|Shift|Alt)\+)*/.exec(text) ?? [];
  const key = text.slice(held.length).toLowerCase();
  return { mod: held.includes('Mod'), shift: held.includes('Shift'), alt: held.includes('Alt'), key: key === 'space' ? ' ' : key };
}

const ON_MAC = typeof navigator !== 'undefined' && /Mac|iPhone|iPad/.test(navigator.userAgent);
const WORDS: Readonly<Record<string, string>> = { arrowup: '↑', arrowdown: '↓', arrowleft: '←', arrowright: '→', ' ': 'Space', escape: 'Esc', pageup: 'Page up', pagedown: 'Page down' };

/** Keys as they are printed on the keyboard, one entry per key to press. */
export function shownKeys(text: string, mac = ON_MAC): readonly string[] {
  const { mod, shift, alt, key } = parseKeys(text);
  const name = WORDS[key] ?? (key.length === 1 ? key.toUpperCase() : key[0]!.toUpperCase() + key.slice(1));
  return [mod && (mac ? 'Command' : 'Ctrl'), alt && (mac ? 'Option' : 'Alt'), shift && 'Shift', name].filter((part) => part !== false);
}

/** Whether a key press is the one named. Where a layout gives other characters (or Alt does), the key's place counts. */
export function fits(keys: Keys, press: KeyPress): boolean {
  const third = press.getModifierState?.('AltGraph') === true;
  const held = { mod: !third && (press.ctrlKey || press.metaKey), alt: !third && press.altKey };
  if (keys.mod !== held.mod || keys.alt !== held.alt) return false;
  const typed = press.key.toLowerCase();
  if (keys.key === typed && (keys.shift === press.shiftKey || isSign(typed))) return true;
  return keys.shift === press.shiftKey && keys.key === byPlace(press, keys.shift || keys.alt);
}

/** Signs are typed with Shift on one keyboard and without on another. */
const isSign = (key: string): boolean => key.length === 1 && !/[\p{L}\p{N} ]/u.test(key);

/** The Latin letter or the digit at the place of a key, where the character it gives is none. */
function byPlace({ key, code }: KeyPress, changed: boolean): string | undefined {
  const [, place] = /^(?:Key|Digit)([A-Z0-9])$/.exec(code) ?? [];
  const foreign = key.length === 1 && key.codePointAt(0)! > 0x7f;
  return foreign || (changed && /^\d$/.test(place ?? '')) ? place?.toLowerCase() : undefined;
}

const CLIPBOARD = new Set(['a', 'c', 'x', 'v']);
const EDITING = new Set([...CLIPBOARD, 'z', 'y', 'arrowleft', 'arrowright', 'arrowup', 'arrowdown', 'home', 'end', 'backspace', 'delete']);
const MOVING = new Set(['arrowleft', 'arrowright', 'arrowup', 'arrowdown', 'home', 'end', 'pageup', 'pagedown', ' ', 'enter']);
const PRESSING = new Set([' ', 'enter']);

const TYPED_IN = 'input:not([type=range], [type=checkbox], [type=radio], [type=button], [type=submit], [type=reset], [type=file], [type=color]), textarea, select, [contenteditable=""], [contenteditable=true]';
const MOVED = 'input[type=range], input[type=radio], [role=slider], [role=separator], [role=menu], [role=menuitem], [role=listbox], [role=option], [role=tab], [role=tree], [role=combobox]';
const PRESSED = 'button, a[href], summary, input, [role=button], [role=switch], [role=checkbox]';

/**
 * Whether keys may act where the focus is. Fields keep what is typed and edited in them, controls the keys that work
 * them. What has no modifier acts on bench and sheet only, so that nobody sets something off by speaking or stumbling;
 * so do copying and pasting, which elsewhere mean text.
 */
export function mayAct(keys: Keys, target: EventTarget | null): boolean {
  const element = target instanceof Element ? target : undefined;
  const chord = keys.mod || /^f\d+$/.test(keys.key);
  if (isIn(element, TYPED_IN)) return chord && !(keys.mod && EDITING.has(keys.key));
  const onWork = isIn(element, '[data-room=bench], [data-room=sheet]');
  if (keys.mod && !keys.shift && CLIPBOARD.has(keys.key)) return (onWork || nowhere(element)) && !hasMarkedText();
  return chord || keys.alt || keys.key === 'escape' || (onWork && !isWorkedBy(element, keys.key));
}

const isIn = (element: Element | undefined, selector: string): boolean => element !== undefined && element.closest(selector) !== null;
const nowhere = (element: Element | undefined): boolean => element === undefined || element === element.ownerDocument.body;
const isWorkedBy = (element: Element | undefined, key: string): boolean => (MOVING.has(key) && isIn(element, MOVED)) || (PRESSING.has(key) && isIn(element, PRESSED));

const hasMarkedText = (): boolean => typeof getSelection === 'function' && getSelection()?.isCollapsed === false;

/** The command a key press means, where it may act. On the sheet the sheet's own keys come first, elsewhere the others. */
export function commandOf(commands: readonly Command[], press: KeyPress): Command | undefined {
  const meant = commands.filter(({ keys = [] }) => keys.map(parseKeys).some((each) => fits(each, press) && mayAct(each, press.target)));
  const onSheet = press.target instanceof Element && press.target.closest('[data-room=sheet]') !== null;
  return meant.find(({ group }) => (group === 'Sheet') === onSheet) ?? meant[0];
}

/** Keys that two commands claim where both would act: those of the sheet's own and the others' are told apart by the focus. */
export function doubledKeys(commands: readonly Command[]): readonly string[] {
  const claims = commands.flatMap(({ id, group, keys = [] }) => keys.map((text) => {
    const { mod, shift, alt, key } = parseKeys(text);
    const place = mod || alt ? 'everywhere' : group === 'Sheet' ? 'on the sheet' : 'elsewhere';
    return { id, says: `${JSON.stringify({ mod, alt, shift: shift && !isSign(key), key })} ${place}` };
  }));
  return claims.filter(({ id, says }, at) => claims.findIndex((other) => other.says === says && other.id !== id) > at).map(({ id, says }) => `${says}: ${id}`);
}
