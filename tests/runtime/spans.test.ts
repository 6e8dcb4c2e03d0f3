import { describe, expect, it } from 'vitest';
import { type ExposedInput, checkGraph, listInputs, provedInputs, readGraph, setInputs, writeGraph } from '../../src/runtime/index.ts';
import { catalogue, graph } from './arithmetic.ts';

const exposed = (more: Partial<ExposedInput>, value = 2) =>
  graph({ a: ['constant', { value }], t: ['label'] }, [], { inputs: [{ name: 'amount', label: 'Amount', help: '', sets: 'a.value', ...more }] });
const codes = (more: Partial<ExposedInput>) => checkGraph(exposed(more), catalogue).map(({ code, place }) => [code, place]);

describe('limits of an exposed input', () => {
  it('narrow those of its parameter, and never widen them', () => {
    expect(listInputs(exposed({ limits: [1, 5] }), catalogue)[0]!.param).toMatchObject({ min: 1, max: 5 });
    expect(listInputs(exposed({ limits: [-5000, 5000] }), catalogue)[0]!.param).toMatchObject({ min: -1000, max: 1000 });
  });

  it('are kept by whoever sets it', () => {
    const set = (value: number) => setInputs(exposed({ limits: [1, 5] }), catalogue, new Map([['amount', value]]));
    expect([set(1).ok, set(5).ok]).toEqual([true, true]);
    const refused = set(5.5);
    expect(refused.ok ? [] : refused.problems).toMatchObject([{ place: 'amount', code: 'out-of-limits', expected: '1 to 5 mm' }]);
  });

  it.each<[string, Partial<ExposedInput>, unknown]>([
    ['in order', { limits: [1, 5], proved: [2, 3] }, []],
    ['least and greatest exchanged', { limits: [5, 1] }, [['out-of-limits', 'input "amount", limits']]],
    ['beyond those of the parameter', { proved: [0, 1001] }, [['out-of-limits', 'input "amount", proved']]],
    ['where no number is set', { sets: 't.style', limits: [0, 1] }, [['wrong-kind', 'input "amount", limits']]],
    ['parts of a count', { sets: 't.copies', limits: [1.5, 2.5] }, []],
  ])('are checked: %s', (_name, more, found) => { expect(codes(more)).toEqual(found); });

  it('are read as they were written', () => {
    const document = exposed({ group: 'Sizes', limits: [1, 5], proved: [2, 3.5] });
    expect(readGraph(writeGraph(document), catalogue)).toEqual({ ok: true, document });
  });

  it.each(['[1]', '[1, "5"]', '[1, 1e999]', '5', 'null'])('are refused by their place where they are %s', (text) => {
    const wrong = writeGraph(exposed({ limits: [1, 5] })).replace('"limits": [1, 5]', `"limits": ${text}`);
    const read = readGraph(wrong, catalogue);
    expect(read.ok ? [] : read.problems.map(({ place }) => place)).toEqual(['inputs[0].limits']);
  });
});

describe('what a recipe was proved for', () => {
  it.each([[2, []], [3, []], [1.9, [1.9]], [3.1, [3.1]]])('%f lies there or beyond', (value, beyond) => {
    const { proved, beyond: found } = provedInputs(exposed({ proved: [2, 3] }, value), catalogue);
    expect([proved.length, found.map((one) => one.value)]).toEqual([1, beyond]);
  });

  it('is nothing where the recipe says nothing about it', () => {
    expect(provedInputs(exposed({}, 999), catalogue)).toEqual({ proved: [], beyond: [] });
  });
});
