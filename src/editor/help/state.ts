import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';

/** What the help shows: one of its lists, and the step of the tour, counted from 0. */
export interface HelpState {
  readonly open: 'commands' | 'keys' | 'cautions' | undefined;
  readonly tour: number | undefined;
}

export const help = createStore<HelpState>()(() => ({ open: undefined, tour: undefined }));
export const useHelp = <T>(pick: (state: HelpState) => T): T => useStore(help, pick);

export const openHelp = (open: HelpState['open']): void => help.setState({ open });
export const goToTourStep = (tour: number | undefined): void => help.setState({ tour });
