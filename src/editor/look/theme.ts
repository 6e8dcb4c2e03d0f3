import { createStore } from 'zustand/vanilla';
import { remember, remembered } from '../app/storage.ts';

/** What the person asked for; `system` follows the computer's setting. */
export type Choice = 'system' | 'light' | 'dark';

export interface Theme {
  readonly choice: Choice;
  /** Whether the page is dark now. What paints by itself (a canvas) paints again when this changes. */
  readonly dark: boolean;
}

const KEY = 'groovewright.theme';
const system = typeof matchMedia === 'function' ? matchMedia('(prefers-color-scheme: dark)') : undefined;

const themeOf = (choice: Choice): Theme => ({ choice, dark: choice === 'system' ? system?.matches === true : choice === 'dark' });

export const theme = createStore<Theme>()(() => {
  const kept = remembered(KEY);
  return themeOf(kept === 'light' || kept === 'dark' ? kept : 'system');
});

/** Sets the theme and keeps it for the next visit. */
export function chooseTheme(choice: Choice): void {
  remember(KEY, choice);
  paint(themeOf(choice));
}

/** Puts the theme on the page and follows the system from then on. */
export function startTheme(): void {
  system?.addEventListener('change', () => paint(themeOf(theme.getState().choice)));
  paint(theme.getState());
}

/** The page first, so that who hears of the change reads the new colours. */
function paint(next: Theme): void {
  const { dataset } = document.documentElement;
  if (next.choice === 'system') delete dataset['theme'];
  else dataset['theme'] = next.choice;
  theme.setState(next);
}
