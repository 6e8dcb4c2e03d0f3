import { expect, it } from 'vitest';
import { makeProgress } from '../../src/cli/progress.ts';

function terminal(isTTY: boolean, columns: number) {
  const written: string[] = [];
  const stream = { isTTY, columns, write: (text: string) => written.push(text) } as unknown as NodeJS.WriteStream;
  return { progress: makeProgress(stream), written };
}

it('is silent unless it writes to a terminal', () => {
  const { progress, written } = terminal(false, 80);
  progress.show('proof 10 %', true);
  progress.clear();
  expect(written).toEqual([]);
});

it('keeps to one line of the terminal, and takes it away at the end', () => {
  const { progress, written } = terminal(true, 10);
  progress.show('proof\nof the cut 10 %', true);
  progress.clear();
  progress.clear();
  expect(written).toEqual(['\r\x1b[Kproof of ', '\r\x1b[K']);
});

it('shows the whole text on a terminal that does not know its width', () => {
  const { progress, written } = terminal(true, 0);
  progress.show('proof 10 %', true);
  expect(written).toEqual(['\r\x1b[Kproof 10 %']);
});

it('passes over what follows within a blink, but for beginnings', () => {
  const { progress, written } = terminal(true, 80);
  progress.show('first 0 %', true);
  progress.show('first 50 %');
  progress.show('second 0 %', true);
  expect(written.map((text) => text.slice(4))).toEqual(['first 0 %', 'second 0 %']);
});
