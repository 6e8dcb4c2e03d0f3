import type { Command } from '../state/commands.ts';
import { type Choice, chooseTheme, theme } from '../look/theme.ts';
import { INITIAL_LAYOUT, type Rooms, arrange, layout, seesChecks, toggleChecks } from './layout.ts';
import { isNarrow } from './narrow.ts';

const rooms = (value: Rooms, label: string, key: string): Command => ({
  id: `view-${value}`, label, group: 'View', keys: [key],
  refusal: () => (layout.getState().rooms === value ? `The window shows that already: ${label.toLowerCase()}.` : undefined),
  run: () => arrange({ rooms: value }),
});

const colours = (value: Choice, label: string): Command => ({
  id: `view-colours-${value}`, label, group: 'View',
  refusal: () => (theme.getState().choice === value ? `The page has them already: ${label.toLowerCase()}.` : undefined),
  run: () => chooseTheme(value),
});

/** How the window is divided, and its colours. */
export const layoutCommands: readonly Command[] = [
  rooms('both', 'Sheet and bench', 'Alt+1'),
  rooms('sheet', 'Sheet only', 'Alt+2'),
  rooms('bench', 'Bench only', 'Alt+3'),
  rooms('form', 'Form only', 'Alt+5'),
  {
    id: 'view-checks', label: 'Show or hide the checks', group: 'View', keys: ['Alt+4'],
    labelNow: () => (seesChecks(layout.getState(), isNarrow()) ? 'Hide the checks' : 'Show the checks'),
    run: () => toggleChecks(isNarrow()),
  },
  { id: 'view-layout-reset', label: 'Divide the window as at first', group: 'View', run: () => arrange(INITIAL_LAYOUT) },
  colours('light', 'Light colours'),
  colours('dark', 'Dark colours'),
  colours('system', 'Colours as the system has them'),
];
