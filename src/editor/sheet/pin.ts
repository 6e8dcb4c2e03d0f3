import { editor } from '../state/editor.ts';

/** Keeps showing what the sheet shows whatever is chosen, or lets it follow again. */
export function pin(pinned: boolean): void {
  editor.setState(({ shown, picture }) => (pinned ? { pinned, shown: shown ?? picture?.node } : { pinned }));
}
