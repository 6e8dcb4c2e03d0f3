import { expect, it } from 'vitest';
import { type Thread, makeLink } from '../../../src/editor/worker/link.ts';
import type { FromWorker, ToWorker } from '../../../src/editor/worker/protocol.ts';

/** Workers that do what the test says. */
function linked() {
  const threads: (Thread & { readonly got: ToWorker[]; ended: boolean })[] = [];
  const taken: FromWorker[] = [];
  const deaths: string[] = [];
  const make = () => {
    const got: ToWorker[] = [];
    const thread = { onmessage: null, onerror: null, onmessageerror: null, got, ended: false, postMessage: (message: ToWorker) => void got.push(message), terminate: () => { thread.ended = true; } } as Thread & { got: ToWorker[]; ended: boolean };
    threads.push(thread);
    return thread;
  };
  const link = makeLink(make, (message) => void taken.push(message), (reason) => void deaths.push(reason));
  const say = (thread: Thread, data: FromWorker) => thread.onmessage?.({ data } as MessageEvent<FromWorker>);
  const die = (thread: Thread, message = 'out of memory') => thread.onerror?.({ message, preventDefault: () => undefined } as ErrorEvent);
  return { threads, taken, deaths, link, say, die };
}

it('hands each answer to who asked, whatever order they come in', async () => {
  const { link, threads: [thread], say, taken } = linked();
  const answers = [link.ask('picture', { node: 'a' }), link.ask('picture', { node: 'b' })];
  const ids = thread!.got.map((message) => (message.kind === 'ask' ? message.id : 0));
  say(thread!, { kind: 'answer', id: ids[1]!, value: 'second' });
  say(thread!, { kind: 'answer', id: ids[0]!, value: 'first' });
  expect(await Promise.all(answers)).toEqual(['first', 'second']);
  expect(taken).toEqual([]);
});

it('rejects with the problem of a refused question', async () => {
  const { link, threads: [thread], say } = linked();
  const problem = { expected: 'a', found: 'b', advice: 'C.' };
  const answer = link.ask('playback', { node: 'a' });
  say(thread!, { kind: 'refused', id: 1, problem });
  await expect(answer).rejects.toBe(problem);
});

it('passes everything else on', () => {
  const { threads: [thread], say, taken } = linked();
  say(thread!, { kind: 'ready', shapes: [] });
  expect(taken).toEqual([{ kind: 'ready', shapes: [] }]);
});

it('refuses what was asked of a worker that died, and tells it once', async () => {
  const { link, threads: [thread], die, deaths, say } = linked();
  const answer = link.ask('picture', { node: 'a' });
  die(thread!);
  die(thread!);
  await expect(answer).rejects.toMatchObject({ found: 'a computation that broke off' });
  expect([deaths, thread!.ended]).toEqual([['out of memory'], true]);
  say(thread!, { kind: 'answer', id: 1, value: 'late' });
});

it('tells the death of a worker that gave no reason', () => {
  const { threads: [thread], die, deaths } = linked();
  die(thread!, '');
  expect(deaths).toEqual(['the worker could not be started']);
});

it('starts another worker and hears no more of the one before', () => {
  const { link, threads, say, taken } = linked();
  link.restart();
  link.send({ kind: 'cancel', revision: 1 });
  expect(threads.map(({ got, ended }) => [got.length, ended])).toEqual([[0, true], [1, false]]);
  say(threads[0]!, { kind: 'ready', shapes: [] });
  expect(taken).toEqual([]);
  say(threads[1]!, { kind: 'ready', shapes: [] });
  expect(taken).toHaveLength(1);
});
