import { editor } from '../state/editor.ts';
import { ask } from '../worker/client.ts';
import { aloneOf } from './set-ups.ts';
import { sheet } from './store.ts';

/** Fetches what else there is in the set-ups while one of them is looked at alone, anew whenever all is computed, but not amid a gesture. Returns how to stop. */
export function followAround(): () => void {
  let known: readonly unknown[] = [];
  const follow = () => {
    const state = editor.getState();
    if (state.gesturing) return;
    const wanted = aloneOf(state.picture, sheet.getState().setUp) !== undefined;
    const key = wanted ? [state.picture?.node, state.outcome] : [];
    if (key.length === known.length && key.every((part, i) => part === known[i])) return;
    known = key;
    if (wanted) void fetchAround(state.picture!.node, () => known === key);
    else sheet.setState({ around: [] });
  };
  const stops = [editor.subscribe(follow), sheet.subscribe((state, before) => { if (state.setUp !== before.setUp) follow(); })];
  follow();
  return () => { for (const stop of stops) stop(); };
}

/** Without an answer there is nothing but what is shown itself. */
async function fetchAround(node: string, stillWanted: () => boolean): Promise<void> {
  const around = await ask('around', { node }).catch(() => []);
  if (stillWanted()) sheet.setState({ around });
}
