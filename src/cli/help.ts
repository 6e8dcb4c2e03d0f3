import { COMMANDS, type CommandUse, type OperandUse, type OptionUse } from './commands.ts';
import { column, wrapped } from './layout.ts';

/** What `groovewright help` prints. */
export function overview(): string {
  return [
    'Groovewright makes router programs from a drawing: constant-width grooves for illuminated lettering.',
    '',
    'Usage',
    ...column(COMMANDS.map((command) => [usage(command), command.summary])),
    '',
    ...wrapped('"groovewright help COMMAND" explains a command. "groovewright --version" prints the version.'),
  ].join('\n');
}

/** What `groovewright help COMMAND` and `groovewright COMMAND --help` print. */
export function explain(command: CommandUse): string {
  const described = [
    ...command.operands.map(({ name, doc }) => [name, doc] as const),
    ...command.options.map((option) => [optionWords(option), option.doc] as const),
  ];
  return [
    `groovewright ${usage(command)}`,
    ...wrapped(`${command.summary[0]?.toUpperCase()}${command.summary.slice(1)}.`),
    '',
    ...column(described),
    ...command.notes.flatMap((note) => ['', ...wrapped(note)]),
    '',
    command.examples.length > 1 ? 'Examples' : 'Example',
    ...command.examples.map((example) => `  ${example}`),
  ].join('\n');
}

/** A command in one line: its name, operands and options. */
function usage({ name, operands, options }: CommandUse): string {
  return [name, ...operands.map(operandWords), ...options.map(bracketed)].join(' ');
}

function operandWords({ name, optional }: OperandUse): string {
  return optional ? `[${name}]` : name;
}

function optionWords({ name, value }: OptionUse): string {
  return value ? `--${name} ${value}` : `--${name}`;
}

function bracketed(option: OptionUse): string {
  if (option.required) return optionWords(option);
  return `[${optionWords(option)}]${option.multiple ? '…' : ''}`;
}
