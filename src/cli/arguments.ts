import { parseArgs } from 'node:util';
import { nearest } from '../runtime/index.ts';
import type { CommandUse, OptionUse } from './commands.ts';
import { type Fault, foundUnless, type Found } from './fault.ts';

/** A command's arguments as they were given. */
export interface Given {
  readonly operands: readonly string[];
  /** Options with a value, in the order given. */
  readonly values: ReadonlyMap<string, readonly string[]>;
  readonly switches: ReadonlySet<string>;
}

type Token = NonNullable<ReturnType<typeof parseArgs>['tokens']>[number];
type OptionToken = Extract<Token, { kind: 'option' }>;

const HELP: OptionUse = { name: 'help', doc: 'explain the command' };

/** Reads a command's arguments, and says everything that is wrong with them. */
export function readArguments(command: CommandUse, args: readonly string[]): Found<Given> {
  const uses = [...command.options, HELP];
  const tokens = tokensOf(uses, args);
  const options = tokens.filter((token) => token.kind === 'option');
  const operands = tokens.flatMap((token) => (token.kind === 'positional' ? [token.value] : []));
  const given = { operands, values: valuesOf(options), switches: new Set(options.map(({ name }) => name)) };
  if (given.switches.has('help')) return { ok: true, value: given };
  return foundUnless([...optionFaults(command, uses, options), ...operandFaults(command, operands)], () => given);
}

function tokensOf(uses: readonly OptionUse[], args: readonly string[]): readonly Token[] {
  const options = Object.fromEntries(uses.map(({ name, value }) => [name, { type: value ? 'string' as const : 'boolean' as const }]));
  const help = { ...options, help: { type: 'boolean' as const, short: 'h' } };
  return parseArgs({ args: [...args], options: help, strict: false, allowPositionals: true, tokens: true }).tokens;
}

function valuesOf(options: readonly OptionToken[]): Map<string, string[]> {
  const values = new Map<string, string[]>();
  for (const { name, value } of options) if (value !== undefined) values.set(name, [...(values.get(name) ?? []), value]);
  return values;
}

function optionFaults(command: CommandUse, uses: readonly OptionUse[], options: readonly OptionToken[]): Fault[] {
  const advice = `See "groovewright help ${command.name}".`;
  const seen = new Set<string>();
  const faults = options.flatMap((token) => {
    const use = uses.find(({ name }) => name === token.name);
    if (!use) return [unknownOption(command, token)];
    const repeated = seen.has(use.name) && !use.multiple;
    seen.add(use.name);
    if (repeated) return [{ place: token.rawName, expected: 'it once', found: 'it again', advice }];
    return valueFault(use, token, advice);
  });
  const missing = command.options.filter(({ name, required }) => required && !seen.has(name));
  return [...faults, ...missing.map(({ name, value }) => ({ place: command.name, expected: `--${name} ${value}`, found: 'none', advice }))];
}

function unknownOption(command: CommandUse, { rawName, name }: OptionToken): Fault {
  const names = command.options.map((option) => `--${option.name}`);
  const close = nearest(`--${name}`, names);
  return {
    place: command.name,
    expected: names.length > 0 ? `one of the options ${names.join(', ')}` : 'no options',
    found: rawName,
    advice: close ? `Did you mean ${close}?` : `See "groovewright help ${command.name}".`,
  };
}

function valueFault(use: OptionUse, { rawName, value, inlineValue }: OptionToken, advice: string): Fault[] {
  if (!use.value) return value === undefined ? [] : [{ place: rawName, expected: 'no value', found: `"${value}"`, advice }];
  if (value === undefined || value === '') return [{ place: rawName, expected: use.value, found: 'nothing', advice }];
  if (!inlineValue && value.startsWith('-'))
    return [{ place: rawName, expected: use.value, found: value, advice: `Write ${rawName}=${value} if that is really meant.` }];
  return [];
}

function operandFaults({ name, operands }: CommandUse, given: readonly string[]): Fault[] {
  const advice = `See "groovewright help ${name}".`;
  const missing = operands.filter(({ optional }, i) => !optional && (given[i] === undefined || given[i] === ''));
  const extra = given.slice(operands.length);
  const expected = operands.length > 0 ? `nothing after ${operands.at(-1)!.name}` : 'no operand';
  return [
    ...missing.map((operand) => ({ place: name, expected: `${operand.name}, ${operand.doc}`, found: 'none', advice })),
    ...extra.map((text) => ({ place: name, expected, found: `"${text}"`, advice })),
  ];
}
