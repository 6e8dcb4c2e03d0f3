import { describe, expect, it } from 'vitest';
import { askFor, askNoLonger, moveInput, nameInput, spanInput, wordInput } from '../../../src/editor/model/inputs.ts';
import { after } from './any-edit.ts';
import { TINY, graph } from './graphs.ts';

const plain = graph({ a: 'well', b: 'well', t: 'thin' });
const asked = after(plain, askFor(TINY, plain, 'a', 'depth'));
const both = after(asked, askFor(TINY, asked, 'b', 'depth'));
const names = ({ inputs }: typeof plain) => inputs.map(({ name }) => name);

describe('asking for a value in the form', () => {
  it('takes the parameter’s words and its step’s title, last of all and under a name of its own', () => {
    expect(asked.inputs).toEqual([{ name: 'depth', label: 'Depth', help: 'How deep.', group: 'Well', sets: 'a.depth' }]);
    expect(names(both)).toEqual(['depth', 'depth2']);
  });

  it('is no change for what is asked for already, or is not there', () => {
    for (const [node, param] of [['a', 'depth'], ['a', 'gone'], ['a', 'constructor'], ['gone', 'depth']] as const)
      expect(after(asked, askFor(TINY, asked, node, param))).toBe(asked);
  });

  it('ends without touching the value', () => {
    const set = { ...asked, nodes: asked.nodes.map((node) => ({ ...node, params: node.id === 'a' ? { depth: 9 } : {} })) };
    expect(after(set, askNoLonger('a.depth'))).toEqual({ ...set, inputs: [] });
    expect(after(set, askNoLonger('b.depth'))).toBe(set);
  });

  it('goes by an order that stops at both ends', () => {
    expect(names(after(both, moveInput('depth', 1)))).toEqual(['depth2', 'depth']);
    expect(after(both, moveInput('depth', -1))).toBe(both);
    expect(after(both, moveInput('depth2', 1))).toBe(both);
  });

  it('keeps its label when that is emptied, but lets go of its heading', () => {
    expect(after(asked, wordInput('depth', 'label', ' '))).toBe(asked);
    expect(after(asked, wordInput('depth', 'group', ''))).toEqual({ ...asked, inputs: [{ name: 'depth', label: 'Depth', help: 'How deep.', sets: 'a.depth' }] });
  });

  it('takes no name that another has or that is none', () => {
    for (const name of ['depth2', 'Depth', 'two words', '', 'constructor']) expect(after(both, nameInput(both, 'depth', name))).toBe(both);
    expect(names(after(both, nameInput(both, 'depth', 'deep')))).toEqual(['deep', 'depth2']);
  });

  it('takes limits only where a number is set, in order and within its own', () => {
    const words = after(plain, askFor(TINY, plain, 't', 'word'));
    expect(after(words, spanInput(TINY, words, 'word', 'limits', [0, 1]))).toBe(words);
    for (const span of [[5, 2], [-1, 5], [0, 100]] as const) expect(after(asked, spanInput(TINY, asked, 'depth', 'limits', span))).toBe(asked);
    const limited = after(asked, spanInput(TINY, asked, 'depth', 'proved', [2, 99]));
    expect(limited.inputs[0]!.proved).toEqual([2, 99]);
    expect(after(limited, spanInput(TINY, limited, 'depth', 'proved', undefined))).toEqual(asked);
  });
});
