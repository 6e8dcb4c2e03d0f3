import { describe, expect, it } from 'vitest';
import { type GraphDocument, defineNode, makeCatalogue } from '../../../src/runtime/index.ts';
import { catalogue, graph } from '../../runtime/arithmetic.ts';
import { converse } from './conversation.ts';

/** `a` and `b` are divided and told in `text`; `spare` feeds nothing; nothing here is a result of a run. */
const sums = (a: number, b = 4): GraphDocument => graph({
  a: ['constant', { value: a }], b: ['constant', { value: b }], ratio: ['divide'], text: ['label'], spare: ['constant'],
}, ['a.value -> ratio.dividend', 'b.value -> ratio.divisor', 'ratio.quotient -> text.value']);

describe('a session', () => {
  it('tells the node types when it starts, without code, as data that can be sent', () => {
    const { of } = converse(catalogue);
    const { shapes } = of('ready')[0]!;
    expect(shapes.map(({ name }) => name)).toEqual([...catalogue.keys()]);
    expect(structuredClone(shapes)).toEqual(shapes);
    expect(shapes.some((shape) => 'compute' in shape || 'examples' in shape)).toBe(false);
  });

  it('executes what is seen and shown and what leads there, nothing else', async () => {
    const { evaluate, reports } = converse(catalogue);
    expect((await evaluate(sums(2), { seen: ['ratio'], whole: false })).executed).toEqual(['a', 'b', 'ratio']);
    expect(Object.keys(reports())).toEqual(['ratio']);
    expect((await evaluate(sums(2), { shown: 'text', whole: false })).executed).toEqual(['text']);
    expect((await evaluate(sums(2), { seen: ['spare'], whole: false })).executed).toEqual(['spare']);
  });

  it('executes only what changed', async () => {
    const { evaluate } = converse(catalogue);
    await evaluate(sums(2), { seen: ['text'] });
    expect((await evaluate(sums(2), { seen: ['text'] })).executed).toEqual([]);
    expect((await evaluate(sums(2, 8), { seen: ['text'] })).executed).toEqual(['b', 'ratio', 'text']);
    expect((await evaluate(sums(4, 8), { seen: ['b'], whole: false })).executed).toEqual([]);
  });

  it('tells a report only when the result is another one', async () => {
    const { evaluate, of } = converse(catalogue);
    const seen = ['a', 'b', 'ratio', 'text', 'spare'];
    await evaluate(sums(2), { seen });
    expect(of('report').map(({ node }) => node).sort()).toEqual([...seen].sort());
    await evaluate(sums(2), { seen });
    expect(of('report')).toHaveLength(5);
    await evaluate(sums(2, 8), { seen });
    expect(of('report').slice(5).map(({ node }) => node)).toEqual(['b', 'ratio', 'text']);
  });

  it('tells failed and blocked nodes once, and again when they say something else', async () => {
    const { evaluate, of, reports } = converse(catalogue);
    const seen = ['ratio', 'text'];
    await evaluate(sums(2, 0), { seen });
    await evaluate(sums(2, 0), { seen });
    expect(of('report').map(({ node, report }) => [node, report.state])).toEqual([['ratio', 'failed'], ['text', 'blocked']]);
    expect(reports()['ratio']).toMatchObject({ says: 'divisor: expected a number other than 0, found 0. Change the divisor.', problems: [{ place: 'divisor' }], thumbnail: { layers: [], lines: [] } });
    expect(reports()['text']).toMatchObject({ says: 'waits for value from Divide', missing: [{ port: 'value', from: 'ratio' }] });
    const titled = sums(2, 0);
    await evaluate({ ...titled, nodes: titled.nodes.map((node) => (node.id === 'ratio' ? { ...node, title: 'Share' } : node)) }, { seen });
    expect(reports()['text']!.says).toBe('waits for value from Share');
  });

  it('tells a node of unknown type as failed', async () => {
    const { evaluate, reports } = converse(catalogue);
    await evaluate(graph({ odd: ['never-seen'] }), { seen: ['odd'] });
    expect(reports()['odd']).toMatchObject({ state: 'failed' });
  });

  it('passes over ids that are not in the document', async () => {
    const { evaluate } = converse(catalogue);
    expect(await evaluate(sums(1), { seen: ['gone'], shown: 'gone too' })).toMatchObject({ cancelled: false, executed: [] });
    expect(await evaluate(graph({}), {})).toMatchObject({ cancelled: false, outcome: { status: 'pass', checks: [], files: [] } });
  });

  it('tells everything again when the page forgot it', async () => {
    const { evaluate, of } = converse(catalogue);
    await evaluate(sums(2), { seen: ['a'], shown: 'text' });
    const [reports, pictures] = [of('report').length, of('picture').length];
    await evaluate(sums(2), { seen: ['a'], shown: 'text', forget: true });
    expect([of('report').length, of('picture').length]).toEqual([2 * reports, 2 * pictures]);
  });

  it('tells the picture of the shown node unasked, once while its values are the same', async () => {
    const { evaluate, of } = converse(catalogue);
    await evaluate(sums(2), { shown: 'text' });
    await evaluate(sums(2), { shown: 'text' });
    await evaluate(sums(2, 8), { shown: 'text' });
    expect(of('picture').map(({ picture }) => [picture.node, picture.outputs.lines])).toEqual([['text', ['0.5']], ['text', ['0.25']]]);
  });

  it('tells progress of every node it executes', async () => {
    const { evaluate, of } = converse(catalogue);
    await evaluate(sums(2), { seen: ['ratio'] });
    expect(of('progress').filter(({ done }) => done === 0).map(({ node }) => node)).toEqual(['a', 'b', 'ratio']);
  });
});

describe('the newest evaluation wins', () => {
  it('stops an earlier one between nodes, and answers each request', async () => {
    const { evaluate } = converse(catalogue);
    const [first, second, third] = await Promise.all([1, 2, 3].map((a) => evaluate(sums(a), { seen: ['text'] })));
    expect([first, second, third].map((done) => done!.cancelled)).toEqual([true, true, false]);
    expect(first!.executed.length + second!.executed.length).toBeLessThan(2);
    expect(third!.executed).toContain('text');
  });

  it('stops an earlier one that is under way, through shared memory, before its message is taken', async () => {
    const newest = new Int32Array(new SharedArrayBuffer(4));
    let pauses = 0;
    const { evaluate } = converse(catalogue, { newest, beforeNode: () => { if (++pauses === 2) Atomics.store(newest, 0, 2); } });
    expect(await evaluate(sums(1), { seen: ['text'], revision: 1 })).toMatchObject({ cancelled: true, executed: ['a'] });
    expect(await evaluate(sums(1), { seen: ['text'], revision: 2 })).toMatchObject({ cancelled: false, executed: ['b', 'ratio', 'text'] });
  });

  it('stops a long node at its next checkpoint, through shared memory', async () => {
    const newest = new Int32Array(new SharedArrayBuffer(4));
    const reached: number[] = [];
    const long = defineNode({
      name: 'long', title: 'Long', doc: 'Takes ten steps.', inputs: {}, outputs: { steps: { type: 'number', doc: 'Ten.' } }, params: {},
      examples: [{ title: 'as it comes', inputs: {} }],
      compute(_inputs, _params, { checkpoint }) {
        for (let step = 1; step <= 10; step++) {
          checkpoint(step / 10);
          reached.push(step);
          // Somebody moves on while the third step is taken.
          if (step === 3) Atomics.store(newest, 0, 2);
        }
        return { ok: true, outputs: { steps: 10 } };
      },
    });
    const { evaluate, of } = converse(makeCatalogue([long]), { newest });
    expect(await evaluate(graph({ one: ['long'] }), { seen: ['one'], revision: 1 })).toMatchObject({ cancelled: true, executed: [] });
    expect(reached).toEqual([1, 2, 3]);
    expect(of('report')).toEqual([]);
  });

  it('cancels on request and keeps what was finished', async () => {
    let pauses = 0;
    const talk = converse(catalogue, { beforeNode: () => { if (++pauses === 3) talk.session.receive({ kind: 'cancel', revision: 2 }); } });
    expect(await talk.evaluate(sums(1), { seen: ['text'], revision: 1 })).toMatchObject({ cancelled: true, executed: ['a', 'b'] });
    expect(await talk.evaluate(sums(1), { seen: ['text'], revision: 3 })).toMatchObject({ cancelled: false, executed: ['ratio', 'text'] });
  });
});

describe('a question', () => {
  it('is answered while an evaluation pauses between nodes', async () => {
    const answers: unknown[] = [];
    let pauses = 0;
    const talk = converse(catalogue, {
      beforeNode: () => { if (++pauses === 3) void talk.ask('picture', { node: 'a' }).then(({ outputs }) => answers.push(outputs.lines)); },
    });
    await talk.evaluate(sums(7), { seen: ['text'] });
    expect(answers).toEqual([['7']]);
    const kinds = talk.heard.map(({ kind }) => kind);
    expect(kinds.indexOf('answer')).toBeLessThan(kinds.indexOf('done'));
  });

  it.each(['picture', 'probe'] as const)('about a node without a result is refused: %s', async (question) => {
    const { evaluate, ask } = converse(catalogue);
    await evaluate(sums(1), { seen: ['a'] });
    const about = (node: string) => ask(question, { node, at: [0, 0], within: 1 });
    await expect(about('text')).rejects.toMatchObject({ place: 'text', found: 'one that was not computed' });
    await expect(about('nowhere')).rejects.toMatchObject({ found: 'no such step' });
  });

  it('about a node that was taken away, or has another type now, is refused', async () => {
    const { evaluate, ask } = converse(catalogue);
    await evaluate(sums(1), { seen: ['text', 'spare'] });
    await evaluate(graph({ spare: ['sum'] }), {});
    await expect(ask('picture', { node: 'text' })).rejects.toMatchObject({ found: 'no such step' });
    await expect(ask('picture', { node: 'spare' })).rejects.toMatchObject({ found: 'one that was not computed' });
  });
});
