import { expect, it } from 'vitest';
import { paramWords, valueWords } from '../../src/cli/describe-param.ts';
import type { Param } from '../../src/runtime/index.ts';

const edits = { kind: 'edits', default: [], label: '', doc: '', acts: { split: { places: [1, 1], label: '', doc: '' }, join: { places: [2, 2], label: '', doc: '' } } } as const satisfies Param;

it('tells which acts edits may be', () => expect(paramWords(edits)).toEqual({ type: 'edits', unit: '', limits: 'split, join' }));

it('writes edits as they would be typed', () => {
  expect(valueWords(edits, [{ act: 'split', places: [{ x: 0.1, y: 0.2 }] }, { act: 'join', places: [{ x: 0, y: 1 }, { x: 0.5, y: -0.25 }] }])).toBe('split 0.1,0.2; join 0,1 0.5,-0.25');
  expect(valueWords(edits, [])).toBe('none');
});
