import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import { remember, remembered } from './storage.ts';

/** Which places the window shows: sheet and bench, one of them alone, or the recipe as a form beside the sheet. */
export type Rooms = 'both' | 'sheet' | 'bench' | 'form';

/** How the window is divided. */
export interface Layout {
  readonly rooms: Rooms;
  /** Share of the height that the sheet has, in percent. */
  readonly split: number;
  /** Width of the checks, in CSS pixels. */
  readonly checksWidth: number;
  readonly checksShown: boolean;
  /** Whether the checks are unfolded where they are a line under the sheet. */
  readonly checksOpen: boolean;
}

export interface Range {
  readonly min: number;
  readonly max: number;
}
/** Neither place can be moved out of sight by the divider; there are buttons for that. */
export const SPLIT: Range = { min: 15, max: 85 };
export const CHECKS_WIDTH: Range = { min: 200, max: 560 };
export const INITIAL_LAYOUT: Layout = { rooms: 'both', split: 55, checksWidth: 300, checksShown: true, checksOpen: false };

const KEY = 'groovewright.layout';

/** A value within a range; NaN counts as its least. */
export const within = (value: number, { min, max }: Range): number => Math.min(max, Math.max(min, Number.isNaN(value) ? min : value));

/** What was kept, as far as it makes sense; the initial layout otherwise. */
export function readLayout(text: string | null): Layout {
  const kept = parsed(text);
  const number = (value: unknown, range: Range, otherwise: number) => (typeof value === 'number' ? within(value, range) : otherwise);
  const { rooms } = kept;
  return {
    rooms: rooms === 'sheet' || rooms === 'bench' || rooms === 'form' ? rooms : 'both',
    split: number(kept.split, SPLIT, INITIAL_LAYOUT.split),
    checksWidth: number(kept.checksWidth, CHECKS_WIDTH, INITIAL_LAYOUT.checksWidth),
    checksShown: kept.checksShown !== false,
    checksOpen: kept.checksOpen === true,
  };
}

function parsed(text: string | null): Readonly<Record<string, unknown>> {
  try {
    const value: unknown = JSON.parse(text ?? '');
    return typeof value === 'object' && value !== null ? { ...value } : {};
  } catch {
    return {};
  }
}

export const layout = createStore<Layout>()(() => readLayout(remembered(KEY)));
export const useLayout = <T>(pick: (layout: Layout) => T): T => useStore(layout, pick);

layout.subscribe((now) => remember(KEY, JSON.stringify(now)));

/** Changes the layout; values out of range come to the nearest allowed one. */
export function arrange(change: Partial<Layout>): void {
  layout.setState((now) => {
    const next = { ...now, ...change };
    return { ...next, split: within(next.split, SPLIT), checksWidth: within(next.checksWidth, CHECKS_WIDTH) };
  });
}

/** Shows or hides the checks: beside the sheet, or unfolded below it where there is no room beside. */
export function toggleChecks(narrow: boolean): void {
  const { rooms } = layout.getState();
  const hidden = !seesChecks(layout.getState(), narrow);
  arrange({ [narrow ? 'checksOpen' : 'checksShown']: hidden, ...(hidden && rooms === 'bench' && { rooms: 'both' as const }) });
}

/** Whether the list of checks can be seen as the window is now. */
export const seesChecks = ({ rooms, checksShown, checksOpen }: Layout, narrow: boolean): boolean => rooms !== 'bench' && (narrow ? checksOpen : checksShown);
