import { describe, expect, it } from 'vitest';
import { checkValue, defaultOf, defineNode, editsText, type Handle, makeCatalogue, type Param, parseParam, renderNode, renderNodeText } from '../../src/runtime/index.ts';
import { LIMITS } from '../../src/runtime/document.ts';

const edits = {
  kind: 'edits', default: [], label: 'Edits', doc: 'Done by hand.',
  acts: { split: { places: [1, 1], label: 'Cut', doc: 'Cuts.' }, join: { places: [2, 2], label: 'Join', doc: 'Joins.' }, add: { places: [2, 4], label: 'Draw', doc: 'Draws.' } },
} as const satisfies Param;

const at = (x: number, y: number) => ({ x, y });

describe('the value of edits', () => {
  it.each<[string, unknown]>([
    ['none', []],
    ['one of each', [{ act: 'split', places: [at(0.1, 0.2)] }, { act: 'join', places: [at(0, 0), at(1, -0.5)] }, { act: 'add', places: [at(0, 0), at(1, 1), at(2, 0)] }]],
    ['as many as a list holds', Array.from({ length: LIMITS.edits }, () => ({ act: 'split', places: [at(0, 0)] }))],
  ])('may be %s', (_, value) => expect(checkValue(edits, value)).toBeUndefined());

  it.each<[string, unknown, string, string]>([
    ['no list', { act: 'split', places: [] }, 'wrong-kind', ''],
    ['a point', [at(1, 2)], 'wrong-kind', 'edit 1'],
    ['an edit without places', [{ act: 'split' }], 'wrong-kind', 'edit 1'],
    ['an edit that says more', [{ act: 'split', places: [at(0, 0)], note: '' }], 'wrong-kind', 'edit 1'],
    ['an act by number', [{ act: 1, places: [at(0, 0)] }], 'wrong-kind', 'edit 1'],
    ['a place beyond all bounds', [{ act: 'split', places: [at(0, Infinity)] }], 'wrong-kind', 'edit 1'],
    ['a place of three coordinates', [{ act: 'split', places: [{ x: 0, y: 0, z: 0 }] }], 'wrong-kind', 'edit 1'],
    ['an act not offered', [{ act: 'split', places: [at(0, 0)] }, { act: 'spilt', places: [at(0, 0)] }], 'not-offered', 'edit 2'],
    ['an act that every object has', [{ act: 'constructor', places: [at(0, 0)] }], 'not-offered', 'edit 1'],
    ['too few places', [{ act: 'join', places: [at(0, 0)] }], 'out-of-limits', 'edit 1'],
    ['too many places', [{ act: 'add', places: Array.from({ length: 5 }, () => at(0, 0)) }], 'out-of-limits', 'edit 1'],
    ['too many edits', Array.from({ length: LIMITS.edits + 1 }, () => ({ act: 'split', places: [at(0, 0)] })), 'out-of-limits', 'edits'],
  ])('may not be %s', (_, value, code, found) => {
    expect(checkValue(edits, value)).toMatchObject({ code, found: expect.stringContaining(found) });
  });

  it('is none unless something is done', () => expect(defaultOf(edits)).toEqual([]));

  it('names the act that was probably meant, and how many places it takes', () => {
    expect(checkValue(edits, [{ act: 'spilt', places: [at(0, 0)] }])?.advice).toBe('Did you mean "split"?');
    expect(checkValue(edits, [{ act: 'join', places: [at(0, 0)] }])?.expected).toBe('2 places to join');
    expect(checkValue(edits, [{ act: 'add', places: [at(0, 0)] }])?.expected).toBe('2 to 4 places to add');
  });
});

describe('edits as text', () => {
  it.each<[string, unknown]>([
    ['', []],
    ['split 0.1,0.2; join 0.1,0.3 0.4,0.5', [{ act: 'split', places: [at(0.1, 0.2)] }, { act: 'join', places: [at(0.1, 0.3), at(0.4, 0.5)] }]],
    ['  split   -0.5,1 ;; ', [{ act: 'split', places: [at(-0.5, 1)] }]],
  ])('%j is read', (text, value) => expect(parseParam(edits, text)).toEqual({ ok: true, value }));

  it.each<[string, string]>([
    ['split 0.1', 'edits as act x,y x,y; act x,y'],
    ['split 0.1,0.2,0.3', 'edits as act x,y x,y; act x,y'],
    ['split 1e3,0', 'edits as act x,y x,y; act x,y'],
    ['split 1,2mm', 'edits as act x,y x,y; act x,y'],
    ['0.1,0.2', 'one of "split", "join", "add"'],
    ['fold 0.1,0.2', 'one of "split", "join", "add"'],
    ['join 0.1,0.2', '2 places to join'],
  ])('%j is refused', (text, expected) => {
    expect(parseParam(edits, text)).toMatchObject({ ok: false, problem: { expected } });
  });

  it('is written as it is read', () => {
    const value = [{ act: 'split', places: [at(0.1, 0.2)] }, { act: 'add', places: [at(0.123457, -0.3), at(0.4, 0.5), at(1, 0)] }];
    expect(parseParam(edits, editsText(value))).toEqual({ ok: true, value });
    expect(editsText([])).toBe('');
  });
});

const node = (handle?: Handle) => defineNode({
  name: 'mend', title: 'Mend', doc: 'Mends.', inputs: {}, outputs: { out: { type: 'number', doc: 'Out.' } }, params: { edits, size: { kind: 'number', unit: 'mm', default: 1, min: 0, max: 2, step: 1, label: '', doc: '' } },
  ...(handle && { handles: [handle as never] }), examples: [{ title: 'none', inputs: {} }], compute: () => ({ ok: true, outputs: { out: 1 } }),
});

it('the reference page tells which edits there are', () => {
  expect(renderNode(node())).toContain('| `edits` | edits: split, join, add | none | Done by hand. |');
  expect(renderNodeText(node())).toContain('edits (edits: split, join, add; default none)');
});

it('edits on a picture need a parameter that takes them, and an output of junctions', () => {
  const handle = (param: string, junctions: string): Handle => ({ kind: 'edits', param, junctions, doc: '' });
  expect(() => makeCatalogue([node(handle('size', 'out'))])).toThrow(/"size" is not a parameter that takes edits/);
  expect(() => makeCatalogue([node(handle('edits', 'out'))])).toThrow(/"out" is not an output of type junctions/);
  expect(() => makeCatalogue([node(handle('edits', 'gone'))])).toThrow(/"gone" is not an output/);
});
