import { GRAPH_FORMAT, GRAPH_VERSION, type GraphDocument, type ParamValue, type Problem, defineNode, makeCatalogue } from '../../src/runtime/index.ts';

const value = { type: 'number', doc: 'A number.' } as const;
const zero: Problem = { place: 'divisor', expected: 'a number other than 0', found: '0', advice: 'Change the divisor.' };

/** Node types that do sums, for graphs whose every value can be worked out by hand. */
export const catalogue = makeCatalogue([
  defineNode({
    name: 'constant', title: 'Constant', doc: 'Gives its parameter.', inputs: {}, outputs: { value },
    params: { value: { kind: 'number', unit: 'mm', default: 1, min: -1000, max: 1000, step: 1, label: 'Value', doc: 'The number given.' } },
    examples: [{ title: 'one', inputs: {} }],
    compute: (_inputs, params) => ({ ok: true, outputs: { value: params.value } }),
  }),
  defineNode({
    name: 'sum', title: 'Sum', doc: 'Adds any number of values.',
    inputs: { terms: { type: 'number', many: true, optional: true, doc: 'What is added.' } }, outputs: { total: value }, params: {},
    examples: [{ title: 'nothing', inputs: { terms: [] } }],
    compute: ({ terms }) => ({ ok: true, outputs: { total: terms.reduce((total, term) => total + term, 0) } }),
  }),
  defineNode({
    name: 'split', title: 'Split', doc: 'Parts a number into its whole and its fraction.',
    inputs: { value }, outputs: { whole: value, fraction: value }, params: {},
    examples: [{ title: 'a half', inputs: { value: 0.5 } }],
    compute: (inputs) => ({ ok: true, outputs: { whole: Math.floor(inputs.value), fraction: inputs.value - Math.floor(inputs.value) } }),
  }),
  defineNode({
    name: 'divide', title: 'Divide', doc: 'Divides; fails for 0.',
    inputs: { dividend: value, divisor: value }, outputs: { quotient: value }, params: {},
    examples: [{ title: 'a third', inputs: { dividend: 1, divisor: 3 } }],
    compute: ({ dividend, divisor }) => (divisor === 0 ? { ok: false, problems: [zero] } : { ok: true, outputs: { quotient: dividend / divisor } }),
  }),
  defineNode({
    name: 'label', title: 'Label', doc: 'Writes a number as text.',
    inputs: { value: { ...value, optional: true } }, outputs: { text: { type: 'text', doc: 'The label.' } },
    params: {
      prefix: { kind: 'text', default: '', maxLength: 10, label: 'Prefix', doc: 'Goes before the number.' },
      style: { kind: 'choice', options: ['plain', 'round'], default: 'plain', label: 'Style', doc: 'How the number is written.' },
      copies: { kind: 'number', unit: 'count', default: 1, min: 1, max: 5, step: 1, label: 'Copies', doc: 'How often it is written.' },
      loud: { kind: 'switch', default: false, label: 'Loud', doc: 'Adds an exclamation mark.' },
      sheet: { kind: 'file', accept: ['.svg'], label: 'Sheet', doc: 'A drawing.' },
      marks: { kind: 'points', default: [], label: 'Marks', doc: 'Places put by hand.' },
    },
    examples: [{ title: 'nothing', inputs: { value: undefined } }],
    compute({ value: number = 0 }, { prefix, style, copies, loud }) {
      const text = `${prefix}${style === 'round' ? Math.round(number) : number}${loud ? '!' : ''}`;
      return { ok: true, outputs: { text: text.repeat(copies) }, cautions: loud ? [{ expected: 'calm', found: 'noise', advice: 'Switch it off.' }] : [] };
    },
  }),
  defineNode({
    name: 'broken', title: 'Broken', doc: 'Throws for negative numbers.', inputs: { value }, outputs: { value }, params: {},
    examples: [{ title: 'one', inputs: { value: 1 } }],
    compute(inputs) {
      if (inputs.value < 0) throw new RangeError('value went below zero\n    at somewhere');
      return { ok: true, outputs: inputs };
    },
  }),
]);

type ShortNode = readonly [type: string, params?: Readonly<Record<string, ParamValue>>];

/** A document from the least that has to be said: nodes by id, and wires as `from -> to`. */
export function graph(nodes: Readonly<Record<string, ShortNode>>, wires: readonly string[] = [], rest: Partial<GraphDocument> = {}): GraphDocument {
  return {
    format: GRAPH_FORMAT, version: GRAPH_VERSION, title: 'test', notes: '',
    nodes: Object.entries(nodes).map(([id, [type, params = {}]], i) => ({ id, type, position: [i * 100, 0], params })),
    wires: wires.map((wire) => {
      const [from, to] = wire.split(' -> ');
      return { from: from!, to: to! };
    }),
    inputs: [], groups: [], ...rest,
  };
}
