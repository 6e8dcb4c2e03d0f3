import { describe, expect, it } from 'vitest';
import { type Param, type ParamValue, listInputs, parseParam, setInputs } from '../../src/runtime/index.ts';
import { catalogue, graph } from './arithmetic.ts';

const label = { label: 'L', doc: 'D.' };
const length = { kind: 'number', unit: 'mm', default: 1, min: -500, max: 5000, step: 1, ...label } as const satisfies Param;
const speed = { ...length, unit: '1/min', max: 30_000 } as const satisfies Param;
const count = { ...length, unit: 'count' } as const satisfies Param;
const onOff = { kind: 'switch', default: false, ...label } as const satisfies Param;
const places = { kind: 'points', default: [], ...label } as const satisfies Param;
const join = { kind: 'choice', options: ['round', 'miter'], default: 'round', ...label } as const satisfies Param;
const words = { kind: 'text', default: '', maxLength: 5, ...label } as const satisfies Param;
const drawing = { kind: 'file', accept: ['.svg'], ...label } as const satisfies Param;

describe('parseParam takes', () => {
  it.each<[Param, string, ParamValue]>([
    [length, '10', 10], [length, ' 10 ', 10], [length, '+10', 10], [length, '-10.50', -10.5], [length, '.5', 0.5], [length, '5.', 5], [length, '007', 7],
    [length, '10mm', 10], [length, '10 mm', 10], [length, '2.5cm', 25], [length, '1.2 m', 1200],
    // 1 in = 25.4 mm exactly: NIST Special Publication 811, appendix B.
    [length, '1in', 25.4], [length, '0.5in', 12.7], [length, '0.3 in', 7.62], [length, '-1 in', -25.4],
    [speed, '18000', 18000], [speed, '18000 1/min', 18000], [{ ...length, unit: 'mm/min' }, '1200mm/min', 1200], [{ ...length, unit: 'deg' }, '3 deg', 3],
    [count, '3', 3], [{ ...length, unit: 'ratio' }, '0.5', 0.5],
    [onOff, 'on', true], [onOff, 'TRUE', true], [onOff, ' yes ', true], [onOff, 'off', false], [onOff, 'False', false], [onOff, 'no', false],
    [places, '1,2 -3.5,.5', [{ x: 1, y: 2 }, { x: -3.5, y: 0.5 }]], [places, '', []], [places, '  1,2\n3,4 ', [{ x: 1, y: 2 }, { x: 3, y: 4 }]],
    [join, 'miter', 'miter'], [words, '', ''], [words, ' a b ', ' a b '], [drawing, '', null],
  ])('%o from %j', (param, text, value) => expect(parseParam(param, text)).toEqual({ ok: true, value }));
});

describe('parseParam refuses', () => {
  it.each<[Param, string]>([
    [length, ''], [length, ' '], [length, 'NaN'], [length, 'Infinity'], [length, '1e999'], [length, '1e2'], [length, '0x10'], [length, '10 apples'], [length, '1,5'], [length, '1.000,5'],
    [length, '1 000'], [length, '1_000'], [length, '--1'], [length, '1.2.3'], [length, '.'], [length, '-'], [length, '١٠'], [length, '10 MM'], [length, '10"'], [length, '10deg'],
    [length, '9'.repeat(400)], [length, '5000.1'], [length, '200in'], [speed, '180001/min'], [speed, '1in'], [count, '3 count'], [count, '2.5'], [{ ...length, unit: 'deg' }, '3mm'],
    [onOff, ''], [onOff, '1'], [onOff, 'maybe'], [onOff, 'constructor'], [places, '1'], [places, '1,2,3'], [places, '1,2 3'], [places, '1, 2'], [places, 'a,b'], [places, '1e3,1'], [places, `${'9'.repeat(400)},1`],
    [join, 'Miter'], [join, ''], [words, 'abcdef'], [drawing, 'a.svg'],
  ])('%o from %j', (param, text) => {
    const parsed = parseParam(param, text);
    expect(parsed.ok ? parsed.value : parsed.problem).toMatchObject({ expected: expect.any(String) as string, found: expect.any(String) as string, advice: expect.stringMatching(/[.?]$/) as string });
  });
});

const document = graph({ a: ['constant', { value: 2 }], t: ['label'] }, [], {
  inputs: [
    { name: 'amount', label: 'Amount', help: 'How much.', group: 'Sizes', sets: 'a.value' },
    { name: 'style', label: 'Style', help: '', sets: 't.style' }, { name: 'sheet', label: 'Sheet', help: '', sets: 't.sheet' }, { name: 'prefix', label: 'Prefix', help: '', sets: 't.prefix' },
  ],
});
const set = (values: Record<string, ParamValue>) => setInputs(document, catalogue, new Map(Object.entries(values)));

describe('listInputs', () => {
  it('gives each exposed input with its parameter and present value', () => {
    const listed = listInputs(document, catalogue);
    expect(listed.map(({ name, value }) => [name, value])).toEqual([['amount', 2], ['style', 'plain'], ['sheet', null], ['prefix', '']]);
    expect(listed[0]).toEqual({ name: 'amount', label: 'Amount', help: 'How much.', group: 'Sizes', param: catalogue.get('constant')!.params['value'], value: 2, target: { node: 'a', name: 'value' } });
    expect(listed[1]).not.toHaveProperty('group');
  });

  it('leaves out inputs of parameters that do not exist', () => {
    const broken = { ...document, inputs: ['gone.value', 'a.gone', 'a.constructor', 'a'].map((sets) => ({ ...document.inputs[0]!, sets })) };
    expect(listInputs(broken, catalogue)).toEqual([]);
  });
});

describe('setInputs', () => {
  it('sets the parameters and leaves the document it was given alone', () => {
    const before = structuredClone(document);
    const result = set({ amount: 7, prefix: 'x', style: 'round' });
    expect(result.ok && result.document.nodes.map(({ params }) => params)).toEqual([{ value: 7 }, { prefix: 'x', style: 'round' }]);
    expect(document).toEqual(before);
    expect(result.ok && result.document.wires).toBe(document.wires);
  });

  it('keeps falsy values', () => {
    const result = set({ amount: 0, prefix: '', sheet: null });
    expect(result.ok && result.document.nodes.map(({ params }) => params)).toEqual([{ value: 0 }, { prefix: '', sheet: null }]);
  });

  it('reports every value it cannot set, once each, and suggests the nearest name', () => {
    const result = set({ amuont: 1, amount: 1001, style: 'bold', sheet: { name: 'a.txt', text: '' }, constructor: 1 });
    expect(result.ok ? [] : result.problems.map(({ code, place, advice }) => [code, place, advice])).toEqual([
      ['unknown-name', 'amuont', 'Did you mean "amount"?'], ['out-of-limits', 'amount', 'Give a number within the limits.'],
      ['not-offered', 'style', 'Choose one of those offered.'], ['not-offered', 'sheet', 'Choose a file of that kind.'],
      ['unknown-name', 'constructor', 'Give one of these names.'],
    ]);
  });

  it('reports an input whose parameter does not exist', () => {
    const broken = { ...document, inputs: [{ ...document.inputs[0]!, sets: 'a.gone' }] };
    const result = setInputs(broken, catalogue, new Map([['amount', 1]]));
    expect(result.ok ? [] : result.problems.map(({ code }) => code)).toEqual(['missing-param']);
  });
});
