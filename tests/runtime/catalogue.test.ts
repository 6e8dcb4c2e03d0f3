import { describe, expect, it } from 'vitest';
import { type Handle, type NodeDeclaration, type Param, makeCatalogue } from '../../src/runtime/index.ts';
import { catalogue } from './arithmetic.ts';

const constant = catalogue.get('constant')!;
const width = constant.params['value']!;
const named = (name: string): NodeDeclaration => ({ ...constant, name });
const withParam = (param: unknown, name = 'width'): NodeDeclaration => ({ ...constant, params: { [name]: param as Param } });

const length: Param = { kind: 'number', unit: 'mm', default: 0, min: -9, max: 9, step: 1, label: '', doc: '' };
const withHandle = (handle: Handle): NodeDeclaration => ({
  ...constant,
  params: {
    right: length, up: length, turn: { ...length, unit: 'deg' }, marks: { kind: 'points', default: [], label: '', doc: '' },
    pattern: { kind: 'choice', options: ['corners', 'by hand'], default: 'corners', label: '', doc: '' },
  },
  handles: [handle],
});

it('finds each node by its name', () => {
  expect([...makeCatalogue([named('a'), named('b-2')]).keys()]).toEqual(['a', 'b-2']);
});

describe('throws at a mistake of the node\'s author', () => {
  it.each<[string, readonly NodeDeclaration[], RegExp]>([
    ['a name twice', [named('a'), named('a')], /Two nodes are named "a"/],
    ...['', 'A', 'aB', 'a b', 'a--b', '-a', '2a', 'a.b', 'ä', 'x'.repeat(65)].map((name): [string, NodeDeclaration[], RegExp] => [`the name "${name}"`, [named(name)], /kebab-case/]),
    ['a port with a dot', [{ ...constant, outputs: { 'a.b': { type: 'number', doc: '' } } }], /camelCase/],
    ['a port that every object has', [{ ...constant, inputs: Object.fromEntries([['constructor', { type: 'number' as const, doc: '' }]]) }], /every object/],
    ['a parameter __proto__', [{ ...constant, params: Object.fromEntries([['__proto__', width]]) }], /every object/],
    ['a parameter named as an input', [{ ...constant, inputs: { value: { type: 'number', doc: '' } } }], /both/],
    ['limits that exclude each other', [withParam({ ...width, min: 2, max: 1 })], /min must not exceed max/],
    ['limits that are no numbers', [withParam({ ...width, min: NaN })], /min must not exceed max/],
    ['a step of 0', [withParam({ ...width, step: 0 })], /step must be positive/],
    ['a default outside its limits', [withParam({ ...width, default: 1001 })], /bad default/],
    ['half a count as default', [withParam({ ...width, unit: 'count', default: 0.5 })], /bad default/],
    ['a default that is not offered', [withParam({ kind: 'choice', options: ['a'], default: 'b', label: '', doc: '' })], /bad default/],
    ['an option twice', [withParam({ kind: 'choice', options: ['a', 'a'], default: 'a', label: '', doc: '' })], /option twice/],
    ['a file name ending without dot', [withParam({ kind: 'file', accept: ['svg'], label: '', doc: '' })], /dot/],
    ...([
      ['places of no parameter', { kind: 'places', param: 'other', doc: '' }, /"other" is not a parameter that takes points/],
      ['places of a number', { kind: 'places', param: 'right', doc: '' }, /takes points/],
      ['places from no output', { kind: 'places', param: 'marks', from: 'other', doc: '' }, /no output "other"/],
      ['places from what every object has', { kind: 'places', param: 'marks', from: 'constructor', doc: '' }, /no output "constructor"/],
      ['places from a part of no output', { kind: 'places', param: 'marks', from: 'other.x', doc: '' }, /no output "other.x"/],
      ['a setting of no parameter', { kind: 'places', param: 'marks', sets: { other: 1 }, doc: '' }, /no parameter "other"/],
      ['a setting that is not offered', { kind: 'places', param: 'marks', sets: { pattern: 'askew' }, doc: '' }, /bad value of "pattern"/],
      ['a move of no output', { kind: 'move', outputs: ['value', 'other'], x: 'right', y: 'up', doc: '' }, /no output "other"/],
      ['a move by an angle', { kind: 'move', outputs: ['value'], x: 'right', y: 'turn', doc: '' }, /"turn" is not a number in mm/],
      ['a move by no parameter', { kind: 'move', outputs: ['value'], x: 'other', y: 'up', doc: '' }, /"other" is not a number in mm/],
      ['a move by one parameter', { kind: 'move', outputs: ['value'], x: 'up', y: 'up', doc: '' }, /cannot shift along x and y/],
    ] satisfies [string, Handle, RegExp][]).map(([mistake, handle, message]): [string, NodeDeclaration[], RegExp] => [mistake, [withHandle(handle)], message]),
  ])('%s', (_mistake, declarations, message) => expect(() => makeCatalogue(declarations)).toThrow(message));
});

it('takes handles that name what the node has', () => {
  const handles: Handle[] = [
    { kind: 'places', param: 'marks', doc: '' }, { kind: 'places', param: 'marks', from: 'value.x', doc: '' }, { kind: 'places', param: 'marks', from: 'value', sets: { pattern: 'by hand' }, doc: '' },
    { kind: 'move', outputs: ['value'], x: 'right', y: 'up', doc: '' },
  ];
  for (const handle of handles) expect(makeCatalogue([withHandle(handle)]).size).toBe(1);
});
