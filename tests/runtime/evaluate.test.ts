import { describe, expect, it } from 'vitest';
import { type Evaluation, type EvaluatorOptions, type GraphDocument, type GraphNode, type NodeResult, createEvaluator, defineNode, makeCatalogue } from '../../src/runtime/index.ts';
import { catalogue, graph } from './arithmetic.ts';

/** `a` and `b` feed two branches that join in `text`; `spare` feeds nothing wanted. */
const base = graph({
  a: ['constant', { value: 2.5 }], b: ['constant', { value: 4 }], spare: ['constant'],
  parts: ['split'], wholes: ['sum'], fractions: ['sum'], ratio: ['divide'], text: ['label'],
}, [
  'a.value -> parts.value', 'parts.whole -> wholes.terms', 'parts.fraction -> fractions.terms',
  'wholes.total -> ratio.dividend', 'b.value -> ratio.divisor', 'ratio.quotient -> text.value',
], { inputs: [{ name: 'size', label: 'Size', help: '', sets: 'a.value' }] });

const ALL = [{ node: 'text', port: 'text' }, { node: 'fractions', port: 'total' }];

const set = (document: GraphDocument, id: string, change: Partial<GraphNode>): GraphDocument =>
  ({ ...document, nodes: document.nodes.map((node) => (node.id === id ? { ...node, ...change } : node)) });
const value = (document: GraphDocument, id: string, number: number) => set(document, id, { params: { value: number } });
const executed = ({ log }: Evaluation) => log.filter(({ action }) => action === 'executed').map(({ node }) => node);
const output = ({ nodes }: Evaluation, id: string, port: string) => {
  const result = nodes.get(id);
  return result?.state === 'ready' ? result.outputs[port] : result?.state;
};

/** Evaluates documents in turn with one evaluator and lists what each executed. */
async function executions(documents: readonly GraphDocument[], wanted = ALL, options?: EvaluatorOptions): Promise<string[][]> {
  const evaluator = createEvaluator(catalogue, options);
  const lists: string[][] = [];
  for (const document of documents) lists.push(executed(await evaluator.evaluate(document, wanted)));
  return lists;
}

describe('what an evaluation executes', () => {
  it('is what the wanted outputs need, each node after its sources', async () => {
    expect(await executions([base])).toEqual([['a', 'parts', 'fractions', 'wholes', 'b', 'ratio', 'text']]);
    expect(await executions([base], [{ node: 'fractions', port: 'total' }])).toEqual([['a', 'parts', 'fractions']]);
    expect(await executions([base], [])).toEqual([[]]);
  });

  it('does not depend on the order of what is wanted', async () => {
    expect(await executions([base], [...ALL].reverse())).toEqual(await executions([base], ALL));
  });

  it('is nothing when nothing changed', async () => {
    expect((await executions([base, base, structuredClone(base)])).slice(1)).toEqual([[], []]);
  });

  it.each<[edit: string, after: GraphDocument, nodes: string[]]>([
    ['a node is moved, titled and annotated', set(base, 'a', { position: [9, 9], title: 'A', note: 'Here.' }), []],
    ['an exposed input is relabelled', { ...base, inputs: [{ ...base.inputs[0]!, label: 'Width', help: 'How wide.' }] }, []],
    ['title, notes and groups change', { ...base, title: 'New', notes: 'Notes.', groups: [{ id: 'g', title: 'G', nodes: ['a'], collapsed: true }] }, []],
    ['a default is written out', set(base, 'text', { params: { style: 'plain', copies: 1 } }), []],
    ['the order of nodes changes', { ...base, nodes: [...base.nodes].reverse() }, []],
    ['a node that nothing wanted needs changes', value(base, 'spare', 7), []],
    ['a wire to a node that nothing wanted needs is added', { ...base, nodes: [...base.nodes, { id: 'new', type: 'sum', position: [0, 0], params: {} }], wires: [...base.wires, { from: 'spare.value', to: 'new.terms' }] }, []],
    ['one source changes', value(base, 'b', 5), ['b', 'ratio', 'text']],
    ['only the fraction changes', value(base, 'a', 2.75), ['a', 'parts', 'fractions']],
    ['only the whole changes', value(base, 'a', 3.5), ['a', 'parts', 'wholes', 'ratio', 'text']],
    ['both outputs change', value(base, 'a', 3.75), ['a', 'parts', 'fractions', 'wholes', 'ratio', 'text']],
    ['a parameter of the last node changes', set(base, 'text', { params: { loud: true } }), ['text']],
    ['a wire moves to another output of the same node', { ...base, wires: base.wires.map((wire) => (wire.to === 'wholes.terms' ? { from: 'parts.fraction', to: wire.to } : wire)) }, ['wholes', 'ratio', 'text']],
    ['a second wire joins an input for several', { ...base, wires: [...base.wires, { from: 'spare.value', to: 'wholes.terms' }] }, ['spare', 'wholes', 'ratio', 'text']],
    ['a node changes its type', set(base, 'fractions', { type: 'sum' }), []],
  ])('when %s', async (_edit, after, nodes) => {
    const [, second] = await executions([base, after]);
    expect([...second!].sort()).toEqual([...nodes].sort());
  });

  it('stops where a changed node gives an equal result', async () => {
    // Rounded, the quotient 2/4 and 2/5 give the same text: whoever reads the text rests.
    const rounded = set(base, 'text', { params: { style: 'round' } });
    const [, second] = await executions([value(rounded, 'b', 40), value(rounded, 'b', 50)]);
    expect(second).toEqual(['b', 'ratio', 'text']);
    const longer = { ...base, nodes: [...base.nodes, { id: 'end', type: 'divide', position: [0, 0] as const, params: {} }], wires: [...base.wires, { from: 'wholes.total', to: 'end.dividend' }, { from: 'b.value', to: 'end.divisor' }] };
    expect(await executions([longer, value(longer, 'a', 2.25)], [{ node: 'end', port: 'quotient' }])).toEqual([['a', 'parts', 'wholes', 'b', 'end'], ['a', 'parts']]);
  });

  it('is nothing when a parameter is set back, and when that is undone', async () => {
    expect((await executions([base, value(base, 'b', 5), base, value(base, 'b', 5), base])).slice(2)).toEqual([[], [], []]);
  });

  it('is only what was edited last when edits went unevaluated', async () => {
    expect((await executions([base, value(value(base, 'b', 5), 'b', 4)]))[1]).toEqual([]);
  });

  it('begins anew for a node that left the graph and came back: memory holds the present document only', async () => {
    const gone: GraphDocument = { ...base, nodes: base.nodes.filter(({ id }) => id !== 'text'), wires: base.wires.filter(({ to }) => to !== 'text.value') };
    const evaluator = createEvaluator(catalogue);
    await evaluator.evaluate(base, ALL);
    await evaluator.evaluate(gone, [{ node: 'ratio', port: 'quotient' }]);
    expect(executed(await evaluator.evaluate(base, ALL))).toEqual(['text']);
  });

  it('keeps the memory of nodes that are in the document but were not wanted for a while', async () => {
    const evaluator = createEvaluator(catalogue);
    await evaluator.evaluate(base, ALL);
    await evaluator.evaluate(base, [{ node: 'b', port: 'value' }]);
    expect(executed(await evaluator.evaluate(base, ALL))).toEqual([]);
  });

  it('asks the given equality, by port type', async () => {
    const asked = new Set<string>();
    const coarse: EvaluatorOptions['equal'] = (type, a, b) => {
      asked.add(type);
      return typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) < 0.5 : a === b;
    };
    const lists = await executions([base, value(base, 'b', 4.25), set(base, 'text', { params: { loud: true } })], ALL, { equal: coarse });
    expect(lists.slice(1)).toEqual([['b'], ['text']]);
    expect([...asked].sort()).toEqual(['number', 'text']);
  });
});

describe('results', () => {
  it('hold the value of every output, cautions, and time by the given clock', async () => {
    let clock = 0;
    const evaluator = createEvaluator(catalogue, { now: () => (clock += 5) });
    const loud = set(base, 'text', { params: { loud: true } });
    const evaluation = await evaluator.evaluate(loud, ALL);
    expect(evaluation.nodes.get('parts')).toEqual({ state: 'ready', outputs: { whole: 2, fraction: 0.5 }, cautions: [], milliseconds: 5 });
    expect(evaluation.nodes.get('text')).toMatchObject({ state: 'ready', outputs: { text: '0.5!' }, cautions: [{ found: 'noise' }] });
    expect((await evaluator.evaluate(loud, ALL)).nodes.get('text')).toBe(evaluation.nodes.get('text'));
  });

  it('keep the identity of a value that was computed anew and came out equal', async () => {
    const pairs = makeCatalogue([
      ...catalogue.values(),
      defineNode({
        name: 'pair', title: 'Pair', doc: 'Gives a list twice.', inputs: { value: { type: 'number', doc: 'Any.' } },
        outputs: { list: { type: 'text', doc: 'A list posing as text.' } }, params: {}, examples: [{ title: 'one', inputs: { value: 1 } }],
        compute: ({ value: number }) => ({ ok: true, outputs: { list: { sign: Math.sign(number) } as unknown as string } }),
      }),
    ]);
    const evaluator = createEvaluator(pairs);
    const document = graph({ a: ['constant', { value: 3 }], p: ['pair'] }, ['a.value -> p.value']);
    const wanted = [{ node: 'p', port: 'list' }];
    const first = await evaluator.evaluate(document, wanted);
    const second = await evaluator.evaluate(value(document, 'a', 4), wanted);
    expect(executed(second)).toEqual(['a', 'p']);
    expect(output(second, 'p', 'list')).toBe(output(first, 'p', 'list'));
  });

  it('arrive at an input for several in the order of the wires', async () => {
    const document = graph({ a: ['constant', { value: 1e-3 }], b: ['constant', { value: 1000 }], s: ['sum'], t: ['sum'] },
      ['a.value -> s.terms', 'b.value -> s.terms', 'b.value -> t.terms', 'a.value -> t.terms']);
    const seen: unknown[] = [];
    const spy = makeCatalogue([...catalogue.values()].map((node) => (node.name !== 'sum' ? node : { ...node, compute: ({ terms }: { terms: unknown }) => (seen.push(terms), { ok: true, outputs: { total: 0 } }) }) as never));
    await createEvaluator(spy).evaluate(document, [{ node: 's', port: 'total' }, { node: 't', port: 'total' }]);
    expect(seen).toEqual([[1e-3, 1000], [1000, 1e-3]]);
  });

  it('reject a wanted output that does not exist', async () => {
    const evaluator = createEvaluator(catalogue);
    await expect(evaluator.evaluate(base, [{ node: 'gone', port: 'value' }])).rejects.toThrow('gone.value');
    await expect(evaluator.evaluate(base, [{ node: 'a', port: 'constructor' }])).rejects.toThrow('a.constructor');
  });

  it('come for a chain of ten thousand nodes', async () => {
    const ids = Array.from({ length: 10_000 }, (_, i) => `n${i}`);
    const chain = graph({ a: ['constant', { value: 7 }], ...Object.fromEntries(ids.map((id) => [id, ['sum'] as const])) }, ids.map((id, i) => `${i === 0 ? 'a.value' : `n${i - 1}.total`} -> ${id}.terms`));
    expect(output(await createEvaluator(catalogue).evaluate(chain, [{ node: 'n9999', port: 'total' }]), 'n9999', 'total')).toBe(7);
  });
});

describe('a failing node', () => {
  it('fails alone; dependants say which input they miss, others go on', async () => {
    const { nodes, log } = await createEvaluator(catalogue).evaluate(value(base, 'b', 0), ALL);
    expect(nodes.get('ratio')).toMatchObject({ state: 'failed', problems: [{ place: 'divisor', found: '0' }] });
    expect(nodes.get('text')).toEqual({ state: 'blocked', missing: [{ port: 'value', from: 'ratio' }], milliseconds: 0 });
    expect(nodes.get('fractions')).toMatchObject({ state: 'ready' });
    expect(log.map(({ node }) => node)).not.toContain('text');
  });

  it('is remembered as failed, and wakes only itself and its dependants when mended', async () => {
    const zero = value(base, 'b', 0);
    expect((await executions([zero, zero, value(base, 'b', 2)])).slice(1)).toEqual([[], ['b', 'ratio', 'text']]);
  });

  it('leaves the memory of its dependants as it was: mended by setting back, nothing is executed', async () => {
    expect((await executions([base, value(base, 'b', 0), base])).slice(1)).toEqual([['b', 'ratio'], []]);
  });

  it('that throws becomes a problem without a stack trace', async () => {
    const document = graph({ a: ['constant', { value: -1 }], x: ['broken'], y: ['sum'] }, ['a.value -> x.value', 'x.value -> y.terms']);
    const { nodes } = await createEvaluator(catalogue).evaluate(document, [{ node: 'y', port: 'total' }]);
    expect(nodes.get('x')).toMatchObject({ state: 'failed', problems: [{ found: '"RangeError: value went below zero"' }] });
    expect(JSON.stringify([...nodes.values()])).not.toMatch(/\bat \w|\.ts/);
    expect(nodes.get('y')?.state).toBe('blocked');
  });

  it.each<[string, unknown]>([
    ['an output missing', { ok: true, outputs: {} }], ['an output too many', { ok: true, outputs: { value: 1, other: 2 } }],
    ['an output undefined', { ok: true, outputs: { value: undefined } }], ['no outputs', { ok: true }], ['nothing', undefined],
    ['a promise', Promise.resolve({ ok: true, outputs: { value: 1 } })], ['failure without a problem', { ok: false, problems: [] }], ['failure without problems', { ok: false }],
  ])('is one that returns %s', async (_what, outcome) => {
    const odd = makeCatalogue([{ ...catalogue.get('constant')!, compute: () => outcome as never }]);
    const { nodes } = await createEvaluator(odd).evaluate(graph({ a: ['constant'] }), [{ node: 'a', port: 'value' }]);
    const result = nodes.get('a');
    expect(result).toMatchObject({ state: 'failed', problems: [{ advice: expect.stringContaining('defect of the node itself') as string }] });
  });
});

describe('a graph with faults', () => {
  const evaluate = (document: GraphDocument, node: string, port: string) => createEvaluator(catalogue).evaluate(document, [{ node, port }]);

  it.each<[string, GraphDocument, string]>([
    ['an unknown type', graph({ a: ['nothing'] }), 'unknown-node'],
    ['an unwired input', graph({ a: ['broken'] }), 'missing-input'],
    ['a value out of limits', graph({ a: ['constant', { value: 1e6 }] }), 'out-of-limits'],
    ['a wire to itself', graph({ a: ['sum'] }, ['a.total -> a.terms']), 'cycle'],
    ['a wire from nowhere', graph({ a: ['sum'] }, ['b.value -> a.terms']), 'missing-node'],
    ['the wrong type of value', graph({ a: ['sum'], b: ['label'] }, ['b.text -> a.terms']), 'type-mismatch'],
  ])('fails at the node with %s', async (_what, document, code) => {
    const port = document.nodes[0]!.type === 'sum' ? 'total' : 'value';
    const { nodes, log } = await evaluate(document, 'a', port);
    expect(nodes.get('a')).toMatchObject({ state: 'failed', problems: [{ code }] });
    expect(log).toEqual([]);
  });

  it('fails at every member of a cycle and blocks those behind it', async () => {
    const document = graph({ a: ['sum'], b: ['sum'], c: ['sum'], d: ['constant'], e: ['sum'] }, ['a.total -> b.terms', 'b.total -> a.terms', 'b.total -> c.terms', 'd.value -> c.terms', 'd.value -> e.terms']);
    const { nodes } = await createEvaluator(catalogue).evaluate(document, ['a', 'b', 'c', 'e'].map((node) => ({ node, port: 'total' })));
    expect(['a', 'b', 'c', 'e'].map((id) => nodes.get(id)?.state)).toEqual(['failed', 'failed', 'blocked', 'ready']);
    expect(nodes.get('c')).toMatchObject({ missing: [{ port: 'terms', from: 'b' }] });
  });
});

describe('onResult', () => {
  const told = async (document: GraphDocument, wanted = ALL, evaluator = createEvaluator(catalogue)) => {
    const results: [string, NodeResult][] = [];
    const evaluation = await evaluator.evaluate(document, wanted, { onResult: (node, result) => void results.push([node, result]) });
    return { results, evaluation };
  };

  it('is told every result once, in order, the very objects of the evaluation', async () => {
    const { results, evaluation } = await told(base);
    expect(results.map(([node]) => node)).toEqual([...evaluation.nodes.keys()]);
    for (const [node, result] of results) expect(result).toBe(evaluation.nodes.get(node));
  });

  it('is told reused results as they were', async () => {
    const evaluator = createEvaluator(catalogue);
    const first = await told(base, ALL, evaluator);
    const second = await told(value(base, 'b', 5), ALL, evaluator);
    const same = (id: string) => second.evaluation.nodes.get(id) === first.evaluation.nodes.get(id);
    expect(second.results.map(([node]) => node).filter(same).sort()).toEqual(['a', 'fractions', 'parts', 'wholes']);
  });

  it('is told what failed, what is blocked and what is at fault', async () => {
    const { results } = await told(value(set(base, 'a', { params: { value: 'wide' } }), 'b', 0), [...ALL, { node: 'ratio', port: 'quotient' }]);
    expect(Object.fromEntries(results.map(([node, { state }]) => [node, state]))).toMatchObject({ a: 'failed', parts: 'blocked', b: 'ready', ratio: 'blocked', text: 'blocked' });
    const divided = await told(value(base, 'b', 0));
    expect(divided.results.find(([node]) => node === 'ratio')?.[1].state).toBe('failed');
  });

  it('is told as each node resolves, not at the end', async () => {
    const heard: string[] = [];
    await createEvaluator(catalogue).evaluate(base, ALL, {
      onResult: (node) => void heard.push(node), onProgress: (node, done) => { if (done === 0) heard.push(`begin ${node}`); },
    });
    expect(heard.slice(0, 4)).toEqual(['begin a', 'a', 'begin parts', 'parts']);
  });
});
