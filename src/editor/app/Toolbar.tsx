import { helpCommands } from '../help/commands.ts';
import type { Command } from '../state/commands.ts';
import { useEditor } from '../state/editor.ts';
import { allCommands } from './commands.ts';
import { shownKeys } from './keys.ts';
import { layoutCommands } from './layout-commands.ts';
import { seesChecks, useLayout } from './layout.ts';
import { useNarrow } from './narrow.ts';
import { labelOf, runCommand } from './run.ts';

const byId = (commands: readonly Command[], id: string): Command | undefined => commands.find((command) => command.id === id);

/** The few commands that are wanted all the time, in words. */
export function Toolbar() {
  useEditor(({ history }) => history);
  return (
    <div className="app-tools" role="group" aria-label="Window" data-tour="tools">
      {['undo', 'redo'].map((id) => <CommandButton key={id} command={byId(allCommands, id)} short />)}
      <RoomButtons />
      <CommandButton command={byId(helpCommands, 'help-commands')} />
    </div>
  );
}

/** A button for a command: its keys and, where it cannot be done now, the reason are told on hovering and to screen readers. */
function CommandButton({ command, short = false }: { readonly command: Command | undefined; readonly short?: boolean }) {
  if (command === undefined) return null;
  const refusal = command.refusal?.();
  const hint = [labelOf(command), refusal, command.keys?.map((keys) => shownKeys(keys).join('+')).join(' or ')].filter(Boolean).join(' · ');
  return (
    <button type="button" className="button" title={hint} aria-disabled={refusal !== undefined} data-command={command.id} onClick={() => runCommand(command)}>
      {short ? command.label : labelOf(command)}
    </button>
  );
}

const ROOMS = [['both', 'Both'], ['sheet', 'Sheet only'], ['bench', 'Bench only'], ['form', 'Form only']] as const;

function RoomButtons() {
  const layout = useLayout((now) => now);
  const { rooms } = layout;
  const narrow = useNarrow();
  const run = (id: string) => () => runCommand(byId(layoutCommands, id)!);
  return (
    <>
      <div className="button-set" role="group" aria-label="What the window shows">
        {ROOMS.map(([room, label]) => (
          <button key={room} type="button" className="button" aria-pressed={rooms === room} onClick={rooms === room ? undefined : run(`view-${room}`)}>{label}</button>
        ))}
      </div>
      {!narrow && !seesChecks(layout, narrow) && <button type="button" className="button" data-shows="checks" onClick={run('view-checks')}>Show the checks</button>}
    </>
  );
}
