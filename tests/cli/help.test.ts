import { describe, expect, it } from 'vitest';
import { readArguments } from '../../src/cli/arguments.ts';
import { COMMANDS } from '../../src/cli/commands.ts';
import { explain, overview } from '../../src/cli/help.ts';
import { column, LINE, table } from '../../src/cli/layout.ts';

describe('the help', () => {
  it('names every command', () => {
    for (const { name, summary } of COMMANDS) {
      expect(overview()).toMatch(new RegExp(`^  ${name}\\b`, 'm'));
      expect(overview()).toContain(summary);
    }
  });

  it.each(COMMANDS.map((command) => [command.name, command] as const))('of %s explains every operand and option, in lines that fit', (_, command) => {
    const text = explain(command);
    for (const { name, doc } of [...command.operands, ...command.options]) {
      expect(text).toContain(name);
      expect(text.replace(/\s+/g, ' ')).toContain(doc);
    }
    const prose = text.split('\n').filter((line) => !line.startsWith('  groovewright'));
    expect(Math.max(...prose.map((line) => line.length))).toBeLessThanOrEqual(LINE);
  });

  it.each(COMMANDS.flatMap((command) => command.examples.map((example) => [example, command] as const)))('gives an example that is a right call: %s', (example, command) => {
    const [program, name, ...args] = example.split(' ');
    expect([program, name]).toEqual(['groovewright', command.name]);
    expect(readArguments(command, args)).toMatchObject({ ok: true });
  });
});

describe('the layout', () => {
  it('sets two columns, a long left cell on a line of its own', () => {
    expect(column([['a', 'first'], ['x'.repeat(40), 'second'], ['bcd', '']])).toEqual(['  a    first', `  ${'x'.repeat(40)}`, '       second', '  bcd']);
  });

  it('sets a table without trailing spaces', () => {
    expect(table([['1', 'pass', ''], ['12', 'x', 'y']], { right: [0] })).toEqual(['   1  pass', '  12  x     y']);
  });
});
