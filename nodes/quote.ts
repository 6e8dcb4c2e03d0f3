import '../src/values/types.ts';
import { type Region, regionBounds } from '../src/geometry/index.ts';
import type { Lighting } from '../src/lighting/index.ts';
import type { Materials } from '../src/costing/index.ts';
import { quote } from '../src/papers/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { amount } from '../src/values/check.ts';
import { EXAMPLE_BOARD, EXAMPLE_LIGHTING, EXAMPLE_MATERIALS, EXAMPLE_PRICE } from '../src/values/examples.ts';

export default defineNode({
  name: 'quote',
  title: 'Quote',
  doc: 'Writes a quote for the customer as a PDF of one page: the sign lit, its size, weight and power, the price line by line with margin and tax, and what to mind. As long as rates are placeholders it says so.',
  inputs: {
    price: { type: 'price', doc: 'The price.' },
    materials: { type: 'materials', optional: true, doc: 'The bill of materials, for the weight.' },
    board: { type: 'region', optional: true, doc: 'The board, for its size.' },
    lighting: { type: 'lighting', optional: true, doc: 'The light, for its power.' },
    image: { type: 'image', optional: true, doc: 'The sign as it looks lit.' },
  },
  outputs: { files: { type: 'files', doc: 'The quote.' } },
  params: {
    paper: { kind: 'choice', options: ['A4', 'US Letter'], default: 'A4', label: 'Paper', doc: 'Size of the page.' },
    name: { kind: 'text', default: 'sign', maxLength: 60, label: 'Name', doc: 'What the sign is called.' },
    customer: { kind: 'text', default: '', maxLength: 80, label: 'For', doc: 'Who it is for.' },
    validDays: { kind: 'number', unit: 'count', default: 30, min: 0, max: 3650, step: 1, label: 'Holds for days', doc: 'How long the quote holds; 0 says nothing about that.' },
    notes: { kind: 'text', default: '', maxLength: 1000, label: 'Notes', doc: 'What the customer should know besides.' },
    file: { kind: 'text', default: 'quote.pdf', maxLength: 80, label: 'File name', doc: 'Name of the file.' },
  },
  examples: [{ title: 'a small board', inputs: { price: EXAMPLE_PRICE, materials: EXAMPLE_MATERIALS, board: EXAMPLE_BOARD, lighting: EXAMPLE_LIGHTING, image: undefined } }],
  compute({ price, materials, board, lighting, image }, { file, ...words }) {
    const facts = [...sizeFacts(board), ...weightFacts(materials), ...lightFacts(lighting)];
    return { ok: true, outputs: { files: [{ path: file, base64: quote({ ...words, price, facts, picture: image }) }] } };
  },
});

type Facts = (readonly [string, string])[];

function sizeFacts(board: Region | undefined): Facts {
  const box = board && regionBounds(board);
  return box ? [['Board', `${(box.maxX - box.minX).toFixed(0)} x ${(box.maxY - box.minY).toFixed(0)} mm`]] : [];
}

function weightFacts(materials: Materials | undefined): Facts {
  const weight = materials?.rows.find(({ part }) => part === 'sign');
  return weight === undefined ? [] : [['Weight', `${amount(weight.quantity, 'kg')}, without fixings and supplies`]];
}

function lightFacts(lighting: Lighting | undefined): Facts {
  if (lighting === undefined) return [];
  const watts = lighting.runs.reduce((sum, run) => sum + run.watts, 0);
  const { volts, colourTemperature } = lighting.strip;
  return [['Light', `${amount(Math.round(watts * 10) / 10, 'W')} at ${amount(volts, 'V')}, ${amount(colourTemperature, 'K')}`]];
}
