import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linePlace, scanJson } from '../../src/runtime/json-scan.ts';

const parses = (text: string) => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};
const accepts = (text: string) => scanJson(text, 100).fault === undefined;

/** The grammar is RFC 8259; the engine's own parser, which keeps to it, is the reference. */
describe('accepts exactly what the engine\'s parser accepts', () => {
  it.each([
    '0', '-0', '01', '-', '1.', '.5', '1e5', '1E+5', '1e', '+1', '0x10', 'true', 'tru', 'truefalse', 'null ', '\u00a0null', '\ufeff1', '""', '"\\u12G4"', '"\\u12a4"',
    '"\\x"', '"\t"', '"\u007f"', '"', '"\\', '"\\"', '"\\"', '[]', '[,]', '[1,]', '[1 2]', '[1', ']', '{}', '{,}', '{"a"}', '{"a":}', '{"a":1,}', '{"a":1', '{a:1}', '{"a" : 1 , "b" : [ ] }',
    '[}', '{]', '[1}', '{"a":1]', '1 2', '[] []', '\u2028', '"\u2028"', '', ' ', 'NaN', 'Infinity', '// x', '1,',
  ])('%j', (text) => expect(accepts(text)).toBe(parses(text)));

  it('in any text made of JSON and damaged at random', () => {
    const damaged = fc.tuple(fc.json(), fc.nat(), fc.nat(4), fc.constantFrom('', ',', ':', '"', '\\', '{', ']', '1', ' ', 'e', '\n', '\u0001')).map(
      ([text, at, cut, put]) => text.slice(0, at % (text.length + 1)) + put + text.slice((at % (text.length + 1)) + cut));
    fc.assert(fc.property(damaged, (text) => {
      expect(accepts(text)).toBe(parses(text));
    }), { seed: 4, numRuns: 1500 });
  });
});

describe('finds repeated keys', () => {
  it.each([
    ['{"a":1,"a":2}', ['a']],
    ['{"a":1,"\\u0061":2,"a":3}', ['a', 'a']],
    ['{"a":{"a":{"a":1}},"b":[{"a":1},{"a":1}]}', []],
    ['[{"__proto__":1,"__proto__":2}]', ['__proto__']],
    ['{"":1,"":2}', ['']],
  ])('in %s', (text, keys) => expect(scanJson(text, 100).repeated.map(({ key }) => key)).toEqual(keys));
});

it('counts levels of nesting', () => {
  expect(scanJson('[[[]]]', 3).fault).toBeUndefined();
  expect(scanJson('[[[[]]]]', 3).fault).toMatchObject({ kind: 'too-deep', offset: 3 });
  expect(scanJson('[[],[],{"a":[]}]', 3).fault).toBeUndefined();
});

it('places an offset by line and column, both from 1', () => {
  expect([0, 2, 3, 4].map((offset) => linePlace('ab\n\nc', offset))).toEqual(['line 1, column 1', 'line 1, column 3', 'line 2, column 1', 'line 3, column 1']);
});
