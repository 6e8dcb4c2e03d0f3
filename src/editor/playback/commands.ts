import type { Command } from '../state/commands.ts';
import { editor } from '../state/editor.ts';
import { type Change, change, closed, opened, paused, playback, soughtTo, started, stepped } from './state.ts';
import { totalSeconds } from './moments.ts';
import { playedNode } from './played.ts';

const notPlayable = (): string | undefined =>
  (playedNode(editor.getState()) === undefined ? 'There are no programs yet. Wire the passes to a step that makes them.' : undefined);
const notOpen = (): string | undefined =>
  notPlayable() ?? (playback.getState().programs.length > 0 ? undefined : 'Open the playback first.');

const toggled: Change = (state) => (state.playing ? paused(state) : started(state));

const stepping = (id: string, label: string, key: string, next: Change): Command =>
  ({ id, label, group: 'Sheet', keys: [key], refusal: notOpen, run: () => change(next) });

/** What is done while programs are played back. */
export const playbackCommands: readonly Command[] = [
  {
    id: 'playback-open', label: 'Open or close the playback of programs', group: 'Sheet', keys: ['Shift+P'], refusal: notPlayable,
    labelNow: () => (playback.getState().open ? 'Close the playback of programs' : 'Play the programs'),
    run: () => change(playback.getState().open ? closed : opened),
  },
  {
    id: 'playback-play', label: 'Play or pause the programs', group: 'Sheet', keys: ['P'], refusal: notPlayable,
    labelNow: () => (playback.getState().playing ? 'Pause the programs' : 'Play the programs on'),
    run: () => change(playback.getState().programs.length > 0 ? toggled : opened),
  },
  stepping('playback-previous-move', 'Playback: previous move', ',', stepped('move', -1)),
  stepping('playback-next-move', 'Playback: next move', '.', stepped('move', 1)),
  stepping('playback-previous-pass', 'Playback: previous pass', '<', stepped('pass', -1)),
  stepping('playback-next-pass', 'Playback: next pass', '>', stepped('pass', 1)),
  stepping('playback-begin', 'Playback: to the beginning', 'Shift+Home', soughtTo(0)),
  stepping('playback-end', 'Playback: to the end', 'Shift+End', (state) => soughtTo(totalSeconds(state.programs))(state)),
];
