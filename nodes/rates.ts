import '../src/values/types.ts';
import type { RatedPart } from '../src/costing/index.ts';
import { type NumberParam, defineNode } from '../src/runtime/index.ts';

/** What a rate begins with: a placeholder that is no price. */
const PLACEHOLDER = 1;

const rate = (label: string, by: string): NumberParam => ({
  kind: 'number', unit: 'ratio', default: PLACEHOLDER, min: 0, max: 1_000_000, step: 0.1, label, doc: `Price ${by}. ${PLACEHOLDER} is a placeholder: put your own in.`,
});

export default defineNode({
  name: 'rates',
  title: 'Rates',
  doc: 'The shop\'s own prices, in whatever currency it counts in. They start as placeholders; until it is said that they are your own, every price and quote says so.',
  inputs: {},
  outputs: { rates: { type: 'rates', doc: 'The rates.' } },
  params: {
    own: { kind: 'switch', default: false, label: 'These are our own', doc: 'Switch on once every rate below is the shop\'s own.' },
    currency: { kind: 'text', default: '', maxLength: 12, label: 'Currency', doc: 'What stands behind amounts, such as a sign or three letters; may stay empty.' },
    sheet: rate('Sheet', 'by the square metre'),
    strip: rate('LED strip', 'by the metre'),
    tube: rate('Diffuser tube', 'by the metre'),
    wire: rate('Wire', 'of a pair, by the metre'),
    supply: rate('Supply', 'of one'),
    fuse: rate('Fuse', 'of one with its holder'),
    fixing: rate('Fixing', 'of one'),
    machine: rate('Machine', 'by the hour, with cutters and the person who watches it'),
    bench: rate('Bench', 'by the hour of a person\'s work'),
    margin: { kind: 'number', unit: 'ratio', default: 0, min: 0, max: 10, step: 0.05, label: 'Margin', doc: 'Added to the cost, as a share of it: 0.3 adds 30 %.' },
    tax: { kind: 'number', unit: 'ratio', default: 0, min: 0, max: 1, step: 0.01, label: 'Tax', doc: 'Share of the net price that is added as tax, where your law asks for it.' },
    taxName: { kind: 'text', default: 'Tax', maxLength: 40, label: 'Tax line', doc: 'What the line for tax is called.' },
  },
  examples: [{ title: 'placeholders', inputs: {} }],
  compute: (_inputs, { own, currency, margin, tax, taxName, ...of }) => ({ ok: true, outputs: { rates: { own, currency: currency.trim(), margin, tax, taxName: taxName.trim() || 'Tax', of: of satisfies Record<RatedPart, number> } } }),
});
