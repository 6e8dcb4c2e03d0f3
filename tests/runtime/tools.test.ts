import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findCycles } from '../../src/runtime/cycles.ts';
import { checkValue, deepEqual, nearest } from '../../src/runtime/index.ts';
import { seeded } from '../support/random.ts';

describe('deepEqual', () => {
  const deep = (depth: number) => { let value: unknown = 1; for (let i = 0; i < depth; i++) value = [value]; return value; };

  it.each<[string, unknown, unknown]>([
    ['NaN', NaN, NaN], ['lists', [1, [2, 'x']], [1, [2, 'x']]], ['objects whatever the order of keys', { a: 1, b: { c: null } }, { b: { c: null }, a: 1 }],
    ['typed arrays', new Float64Array([1, NaN, -0]), new Float64Array([1, NaN, -0])], ['views of different buffers', new Int16Array([9, 1, 2]).subarray(1), new Int16Array([1, 2])],
    ['buffers', new Uint8Array([1, 2]).buffer, new Uint8Array([1, 2]).buffer], ['data views', new DataView(new ArrayBuffer(2)), new DataView(new ArrayBuffer(2))],
    ['objects without prototype', Object.assign(Object.create(null), { a: 1 }), { a: 1 }], ['deep nesting', deep(100_000), deep(100_000)], ['nothing', undefined, undefined],
  ])('holds for %s', (_what, a, b) => expect(deepEqual(a, b)).toBe(true));

  it.each<[string, unknown, unknown]>([
    ['0 and -0', 0, -0], ['-0 in a list', [0], [-0]], ['-0 in a typed array', new Float32Array([0]), new Float32Array([-0])], ['number and text', 1, '1'], ['null and undefined', null, undefined],
    ['null and object', null, {}], ['list and object', [], {}], ['an absent and an undefined member', {}, { a: undefined }], ['keys of undefined members', { a: undefined }, { b: undefined }], ['an inherited member', { toString: 1 }, { a: 1 }], ['lengths', [1], [1, 2]],
    ['typed arrays of different types', new Int8Array([1]), new Uint8Array([1])], ['contents', new Int8Array([1, 2]), new Int8Array([1, 3])], ['lengths of typed arrays', new Int8Array(1), new Int8Array(2)],
    ['typed array and list', new Int8Array([1]), [1]], ['buffers', new Uint8Array([1]).buffer, new Uint8Array([2]).buffer], ['a member deep down', { a: [{ b: 1 }] }, { a: [{ b: 2 }] }],
    ['maps, which are no plain data', new Map(), new Map()], ['dates', new Date(0), new Date(0)], ['functions', () => 1, () => 1],
  ])('tells apart %s', (_what, a, b) => {
    expect(deepEqual(a, b)).toBe(false);
    expect(deepEqual(b, a)).toBe(false);
  });

  it('agrees with the text that JSON makes of JSON', () => {
    fc.assert(fc.property(fc.jsonValue(), fc.jsonValue(), (a, b) => {
      expect(deepEqual(a, structuredClone(a))).toBe(true);
      const plain = (value: unknown) => JSON.stringify(value, (_key, member: unknown) => (typeof member === 'object' && member && !Array.isArray(member) ? Object.entries(member).sort(([x], [y]) => (x < y ? -1 : 1)) : Object.is(member, -0) ? '-0' : member));
      if (plain(a) !== plain(b)) expect(deepEqual(a, b)).toBe(false);
    }), { seed: 5, numRuns: 300 });
  });
});

describe('nearest', () => {
  it.each([
    ['chanelWidth', ['channelDepth', 'channelWidth', 'sheetWidth'], 'channelWidth'], ['widht', ['width', 'height'], 'width'], ['WIDTH', ['depth', 'width'], 'width'],
    ['width', ['width'], 'width'], ['x', ['y', 'travelX'], 'y'], ['cutter', ['stock', 'machine'], undefined], ['', ['a'], 'a'], ['abc', [], undefined], ['a'.repeat(10_000), ['a'.repeat(10_000)], undefined],
  ])('to %j among %j is %j', (name, candidates, expected) => expect(nearest(name, candidates)).toBe(expected));

  it('counts edits as the textbook examples do', () => {
    // kitten to sitting is 3 edits (Levenshtein); ca to abc is 3 when no substring is edited twice. From memory.
    expect(nearest('kittenkit', ['sittingkit'])).toBe('sittingkit');
    expect(nearest('kittenki', ['sittingki'])).toBeUndefined();
    expect(nearest('cazzzzzzz', ['abczzzzzzz'])).toBe('abczzzzzzz');
    expect(nearest('cazzzz', ['abczzzz'])).toBeUndefined();
  });
});

describe('base64 of files', () => {
  const file = { kind: 'file', accept: ['.svg'], label: '', doc: '' } as const;
  // RFC 4648, section 10.
  it.each(['', 'Zg==', 'Zm8=', 'Zm9v', 'Zm9vYg==', 'Zm9vYmE=', 'Zm9vYmFy'])('takes the test vector %j', (base64) => expect(checkValue(file, { name: 'a.svg', base64 })).toBeUndefined());
  it.each(['Z', 'Zg', 'Zg=', 'Z===', 'Zm9v\n', 'Zm-_', '=Zg=', 'Zg==Zg=='])('refuses %j', (base64) => expect(checkValue(file, { name: 'a.svg', base64 })).toMatchObject({ code: 'wrong-kind' }));
});

describe('findCycles', () => {
  it('finds what following every path finds', () => {
    const random = seeded(6);
    for (let round = 0; round < 300; round++) {
      const nodes = Array.from({ length: 7 }, (_, i) => `n${i}`);
      const edges = new Map(nodes.map((node) => [node, nodes.filter(() => random() < 0.16)]));
      const reach = (from: string) => {
        const seen = new Set<string>();
        for (const pending = [...edges.get(from)!]; pending.length > 0;) {
          const next = pending.pop()!;
          if (!seen.has(next)) pending.push(...edges.get(next)!);
          seen.add(next);
        }
        return seen;
      };
      const onCycle = nodes.filter((node) => reach(node).has(node));
      const expected = onCycle.map((node) => onCycle.filter((other) => other === node || (reach(node).has(other) && reach(other).has(node))));
      const distinct = [...new Map(expected.map((members) => [members.join(), members])).values()];
      expect(findCycles(nodes, edges)).toEqual(distinct);
    }
  });
});
