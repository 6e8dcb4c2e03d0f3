import { type Outcome, type ParamValue, type ParamValues, type Problems, defineNode, makeCatalogue } from '../../src/runtime/index.ts';

/**
 * Checked by the compiler alone: each line below a `@ts-expect-error` must not compile, and the type check fails when one
 * of them does.
 */
const value = { type: 'number', doc: 'A number.' } as const;
const width = { kind: 'number', unit: 'mm', default: 1, min: 0, max: 9, step: 1, label: 'Width', doc: 'A width.' } as const;
const join = { kind: 'choice', options: ['round', 'miter'], default: 'round', label: 'Join', doc: 'How corners are made.' } as const;
const head = { name: 'double', title: 'Double', doc: 'Doubles a number.' };
const examples = [{ title: 'one', inputs: { value: 1 } }] as const;

type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false;
const holds = <T extends true>(witness?: T) => witness;

const double = defineNode({
  ...head, examples, inputs: { value }, outputs: { result: value }, params: { width, join },
  compute(inputs, params, context) {
    holds<Same<typeof inputs.value, number>>();
    holds<Same<typeof params.width, number>>();
    // The options of a choice are known one by one, not as any text.
    holds<Same<typeof params.join, 'round' | 'miter'>>();
    context.checkpoint(0.5);
    return { ok: true, outputs: { result: 2 * inputs.value } };
  },
});
holds<Same<typeof double.outputs.result.type, 'number'>>();

// Options written in place are inferred as literals too.
defineNode({
  ...head, examples, inputs: { value }, outputs: {}, params: { cap: { kind: 'choice', options: ['butt', 'square'], default: 'butt', label: 'Cap', doc: 'How ends are made.' } },
  compute: (_inputs, { cap }) => {
    holds<Same<typeof cap, 'butt' | 'square'>>();
    // @ts-expect-error not one of the options
    if (cap === 'round') return { ok: true, outputs: {} };
    return { ok: true, outputs: {} };
  },
});

// What several wires and no wire give.
defineNode({
  ...head, params: {}, outputs: {},
  inputs: { several: { ...value, many: true }, perhaps: { ...value, optional: true }, words: { type: 'text', doc: 'Words.' } },
  examples: [{ title: 'two', inputs: { several: [1, 2], perhaps: undefined, words: '' } }],
  compute(inputs) {
    holds<Same<typeof inputs.several, readonly number[]>>();
    holds<Same<typeof inputs.perhaps, number | undefined>>();
    holds<Same<typeof inputs.words, string>>();
    // @ts-expect-error an optional input may be undefined
    holds<Same<typeof inputs.perhaps, number>>();
    void inputs;
    return { ok: true, outputs: {} };
  },
});

// @ts-expect-error an output of the wrong type
defineNode({ ...head, examples, inputs: { value }, outputs: { result: value }, params: {}, compute: () => ({ ok: true, outputs: { result: 'two' } }) });

// @ts-expect-error a declared output is missing
defineNode({ ...head, examples, inputs: { value }, outputs: { result: value }, params: {}, compute: () => ({ ok: true, outputs: {} }) });

defineNode({
  ...head, examples, inputs: { value }, outputs: { result: value }, params: {},
  // @ts-expect-error an output that is not declared
  compute: () => ({ ok: true, outputs: { result: 2, other: 3 } }),
});

defineNode({
  ...head, examples, inputs: { value }, outputs: { result: value }, params: {},
  // @ts-expect-error an input that is not declared
  compute: (inputs) => ({ ok: true, outputs: { result: inputs.other } }),
});

defineNode({
  ...head, examples, inputs: { value }, outputs: { result: value }, params: { width },
  // @ts-expect-error a parameter that is not declared
  compute: (_inputs, params) => ({ ok: true, outputs: { result: params.depth } }),
});

defineNode({
  // @ts-expect-error a port type that does not exist
  ...head, examples: [{ title: 'none', inputs: {} }], inputs: {}, outputs: { result: { type: 'nothing-known', doc: 'What?' } }, params: {},
  compute: () => ({ ok: true, outputs: { result: 1 } }),
});

// @ts-expect-error no examples at all
defineNode({ ...head, inputs: { value }, outputs: {}, params: {}, compute: () => ({ ok: true, outputs: {} }) });

// @ts-expect-error an empty list of examples
defineNode({ ...head, examples: [], inputs: { value }, outputs: {}, params: {}, compute: () => ({ ok: true, outputs: {} }) });

defineNode({
  ...head, inputs: { value }, outputs: {}, params: {},
  // @ts-expect-error an example whose input has the wrong type
  examples: [{ title: 'one', inputs: { value: 'one' } }],
  compute: () => ({ ok: true, outputs: {} }),
});

defineNode({
  ...head, inputs: { value }, outputs: {}, params: { width, join },
  // @ts-expect-error an example with a value that the parameter cannot have
  examples: [{ title: 'one', inputs: { value: 1 }, params: { width: 'wide' } }],
  compute: () => ({ ok: true, outputs: {} }),
});

// @ts-expect-error failing without a problem
defineNode({ ...head, examples, inputs: { value }, outputs: {}, params: {}, compute: () => ({ ok: false, problems: [] }) });

// @ts-expect-error a unit that does not exist
defineNode({ ...head, examples, inputs: { value }, outputs: {}, params: { width: { ...width, unit: 'furlong' } }, compute: () => ({ ok: true, outputs: {} }) });

// @ts-expect-error a problem without advice
export const mute: Problems = [{ expected: 'a circle', found: 'a square' }];

// @ts-expect-error an empty list of problems
export const none: Problems = [];

type Values = ParamValues<{ width: typeof width; join: typeof join }>;
export const given: Values = { width: 1, join: 'miter' };
// @ts-expect-error text for a number
export const wrongKind: Values = { width: '1', join: 'miter' };
// @ts-expect-error a choice that is not offered
export const notOffered: Values = { width: 1, join: 'bevel' };

holds<Same<ParamValue<{ kind: 'switch'; default: true; label: ''; doc: '' }>, boolean>>();
holds<Same<ParamValue<typeof join>, 'round' | 'miter'>>();

/** Typed declarations go into a catalogue; what comes out can be described, but not be called without its types. */
const taken = makeCatalogue([double]).get('double')!;
export const title: string = taken.title;
// @ts-expect-error nobody knows what this node takes
export const outcome: Outcome<(typeof taken)['outputs']> = taken.compute({ value: 1 }, { width: 1 }, { checkpoint: () => undefined });
