import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';

/** Whether the list of what the form asks for is open. */
export interface AskedState {
  readonly open: boolean;
}

const asked = createStore<AskedState>()(() => ({ open: false }));

export const useAsked = <T>(pick: (state: AskedState) => T): T => useStore(asked, pick);

export function openAsked(): void {
  asked.setState({ open: true });
}

export function closeAsked(): void {
  asked.setState({ open: false });
}
