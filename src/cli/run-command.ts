import { readFileSync } from 'node:fs';
import { nearest } from '../runtime/index.ts';
import { type Given, readArguments } from './arguments.ts';
import { COMMANDS, type CommandUse } from './commands.ts';
import { faulty, oneLine } from './fault.ts';
import { explain, overview } from './help.ts';
import { print, printFaults } from './output.ts';
import type { ExitStatus } from './status.ts';

type Action = (given: Given) => ExitStatus | Promise<ExitStatus>;

/** What does a command is loaded when it is asked for: nodes with their typefaces take longer to load than a mistyped call should. */
const ACTIONS: ReadonlyMap<string, () => Action | Promise<Action>> = new Map<string, () => Action | Promise<Action>>([
  ['run', async () => (await import('./run.ts')).run], ['inputs', async () => (await import('./inputs.ts')).inputs],
  ['nodes', async () => (await import('./nodes.ts')).nodes], ['batch', async () => (await import('./batch.ts')).batch],
  ['compare', async () => (await import('./compare.ts')).compare], ['help', () => help],
]);

/** Does what the command line says. Whatever goes wrong ends in an exit status and a line, never in a stack trace. */
export async function runCommand(args: readonly string[]): Promise<ExitStatus> {
  try {
    return await dispatched(args);
  } catch (error) {
    const told = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
    process.stderr.write(`Internal fault, please report it with the command that led to it: ${oneLine(told)}\n`);
    return 2;
  }
}

async function dispatched([name, ...args]: readonly string[]): Promise<ExitStatus> {
  if (name === '--help' || name === '-h') return printed(overview());
  if (name === '--version') return printed(version());
  const command = COMMANDS.find((known) => known.name === name);
  if (!command) return unknownCommand(name);
  const given = readArguments(command, args);
  if (!given.ok) return printFaults(given.faults);
  if (given.value.switches.has('help')) return printed(explain(command));
  return (await ACTIONS.get(command.name)!())(given.value);
}

function help({ operands: [name] }: Given): ExitStatus {
  const command = COMMANDS.find((known) => known.name === name);
  if (command) return printed(explain(command));
  return name === undefined ? printed(overview()) : unknownCommand(name);
}

function unknownCommand(name: string | undefined): ExitStatus {
  const names = COMMANDS.map((command: CommandUse) => command.name);
  const close = name === undefined ? undefined : nearest(name, names);
  const advice = close ? `Did you mean ${close}?` : '"groovewright help" explains them.';
  return printFaults(faulty('groovewright', `a command (${names.join(', ')})`, name ? `"${name}"` : 'none', advice).faults);
}

function printed(text: string): ExitStatus {
  print(text);
  return 0;
}

function version(): string {
  const manifest: unknown = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
  return (manifest as { version: string }).version;
}
