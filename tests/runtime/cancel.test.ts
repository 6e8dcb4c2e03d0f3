import { describe, expect, it } from 'vitest';
import { type EvaluateOptions, type Evaluation, createEvaluator, defineNode, makeCatalogue } from '../../src/runtime/index.ts';
import { catalogue, graph } from './arithmetic.ts';

/** Passes its number on in four steps; with `stubborn`, it carries on as if a checkpoint never stopped it. */
const steps = defineNode({
  name: 'steps', title: 'Steps', doc: 'Passes a number on, slowly.', inputs: { value: { type: 'number', doc: 'Any.' } }, outputs: { value: { type: 'number', doc: 'The same.' } },
  params: { stubborn: { kind: 'switch', default: false, label: 'Stubborn', doc: 'Catches what a checkpoint throws.' } },
  examples: [{ title: 'one', inputs: { value: 1 } }],
  compute({ value }, { stubborn }, { checkpoint }) {
    let kept = value;
    for (const done of [0.25, 0.5, 0.5, NaN, 0.1, 2]) {
      try {
        checkpoint(done);
      } catch (thrown) {
        if (!stubborn) throw thrown;
        kept = -1;
      }
    }
    return { ok: true, outputs: { value: kept } };
  },
});
const slow = makeCatalogue([...catalogue.values(), steps]);
const chain = (stubborn = false) => graph({ a: ['constant'], s: ['steps', { stubborn }], t: ['steps', { stubborn }], end: ['sum'] }, ['a.value -> s.value', 's.value -> t.value', 't.value -> end.terms']);
const WANTED = [{ node: 'end', port: 'total' }];
const executed = ({ log }: Evaluation) => log.filter(({ action }) => action === 'executed').map(({ node }) => node);

/** Says yes from the nth question on. */
const cancelAt = (n: number): EvaluateOptions => {
  let asked = 0;
  return { isCancelled: () => ++asked >= n };
};

describe.each([false, true])('a cancelled evaluation (nodes that resist: %s)', (stubborn) => {
  const QUESTIONS = 4 + 2 * 6;

  it('may stop at every question, keeps what was finished, and spoils nothing', async () => {
    for (let n = 1; n <= QUESTIONS; n++) {
      const evaluator = createEvaluator(slow);
      const first = await evaluator.evaluate(chain(stubborn), WANTED, cancelAt(n));
      expect(first.cancelled, `question ${n}`).toBe(true);
      expect([...first.nodes.keys()]).toEqual(executed(first));
      const second = await evaluator.evaluate(chain(stubborn), WANTED);
      expect(second.cancelled).toBe(false);
      expect(second.nodes.get('end')).toMatchObject({ state: 'ready', outputs: { total: 1 } });
      expect([...executed(first), ...executed(second)]).toEqual(['a', 's', 't', 'end']);
    }
  });

  it('is one that was stopped in time', async () => {
    expect((await createEvaluator(slow).evaluate(chain(stubborn), WANTED, cancelAt(QUESTIONS + 1))).cancelled).toBe(false);
  });
});

describe('progress', () => {
  it('is told per node from 0 to 1, never backwards, never twice', async () => {
    const told: string[] = [];
    await createEvaluator(slow).evaluate(chain(), [{ node: 's', port: 'value' }], { onProgress: (node, done) => told.push(`${node} ${done}`) });
    expect(told).toEqual(['a 0', 'a 1', 's 0', 's 0.25', 's 0.5', 's 1']);
  });

  it('is not told for what is reused', async () => {
    const told: string[] = [];
    const evaluator = createEvaluator(slow);
    await evaluator.evaluate(chain(), WANTED);
    await evaluator.evaluate(chain(), WANTED, { onProgress: (node) => told.push(node) });
    expect(told).toEqual([]);
  });
});

describe('pausing', () => {
  it('happens once before each execution and never for what is reused', async () => {
    let pauses = 0;
    const evaluator = createEvaluator(slow);
    const pause = () => Promise.resolve(void (pauses += 1));
    await evaluator.evaluate(chain(), WANTED, { pause });
    await evaluator.evaluate(chain(), WANTED, { pause });
    expect(pauses).toBe(4);
  });

  it('lets a cancellation in', async () => {
    let cancelled = false;
    const pause = () => Promise.resolve(void (cancelled = true));
    const evaluation = await createEvaluator(slow).evaluate(chain(), WANTED, { pause, isCancelled: () => cancelled });
    expect(evaluation).toMatchObject({ cancelled: true, log: [] });
  });

  it('lets evaluations of different documents overlap without mixing their values', async () => {
    const evaluator = createEvaluator(slow);
    const of = (value: number) => graph({ a: ['constant', { value }], s: ['steps'], end: ['sum'] }, ['a.value -> s.value', 's.value -> end.terms']);
    const options = { pause: () => Promise.resolve() };
    const results = await Promise.all([1, 2, 3, 1, 2].map((value) => evaluator.evaluate(of(value), WANTED, options)));
    expect(results.map(({ nodes }) => nodes.get('end'))).toMatchObject([1, 2, 3, 1, 2].map((total) => ({ outputs: { total } })));
  });
});

describe('what the host\'s own callbacks throw', () => {
  it.each<[string, EvaluateOptions]>([
    ['onProgress', { onProgress: (_node, done) => { if (done === 0.5) throw new Error('host'); } }],
    ['isCancelled', (() => { let n = 0; return { isCancelled: () => { if (++n === 4) throw new Error('host'); return false; } }; })()],
    ['pause', { pause: () => Promise.reject(new Error('host')) }],
  ])('from %s comes out again and is not blamed on a node', async (_which, options) => {
    const evaluator = createEvaluator(slow);
    await expect(evaluator.evaluate(chain(), WANTED, options)).rejects.toThrow('host');
    expect((await evaluator.evaluate(chain(), WANTED)).nodes.get('end')).toMatchObject({ state: 'ready' });
  });
});
