import { defineNode, makeCatalogue } from '../../src/runtime/index.ts';
import { atMost, type ResultFile } from '../../src/values/index.ts';
import '../../src/values/types.ts';

/** Two nodes that behave as the command line's tests need: quick, slow, failing or bulky on demand. */
const tinyDrawing = defineNode({
  name: 'tiny-drawing',
  title: 'Tiny drawing',
  doc: 'Hands a width on. It fails or idles when a test asks for it.',
  inputs: {},
  outputs: { width: { type: 'number', doc: 'The width.' }, words: { type: 'text', doc: 'The phrase, and what the artwork says.' } },
  params: {
    artwork: { kind: 'file', accept: ['.svg', '.bin'], label: 'Artwork', doc: 'A drawing.' },
    phrase: { kind: 'text', default: 'open', maxLength: 40, label: 'Phrase', doc: 'Any words.' },
    width: { kind: 'number', unit: 'mm', default: 10, min: 1, max: 100, step: 0.1, label: 'Width', doc: 'A width.' },
    manner: {
      kind: 'choice', options: ['well', 'problem', 'throw', 'slow', 'out-of-memory'], default: 'well', label: 'Manner', doc: 'How it goes.',
    },
    bright: { kind: 'switch', default: false, label: 'Bright', doc: 'A switch.' },
  },
  examples: [{ title: 'as it comes', inputs: {} }],
  compute(_inputs, { artwork, phrase, width, manner }) {
    if (manner === 'problem')
      return { ok: false, problems: [{ place: 'width', expected: 'a width that suits', found: `${width} mm\nor so`, advice: 'Choose another.' }] };
    if (manner === 'throw') throw new TypeError('a slip of the programmer');
    if (manner === 'out-of-memory') for (const hoard: unknown[] = []; ;) hoard.push(new Array(1e6).fill(hoard.length));
    for (const end = Date.now() + (manner === 'slow' ? 20_000 : 0); Date.now() < end;);
    const content = artwork === null ? 'no artwork' : 'text' in artwork ? artwork.text : `base64 ${artwork.base64}`;
    return { ok: true, outputs: { width, words: `${phrase}: ${content}` } };
  },
});

const tinyResults = defineNode({
  name: 'tiny-results',
  title: 'Tiny results',
  doc: 'Makes every kind of result.',
  inputs: { width: { type: 'number', doc: 'The width to check.' }, words: { type: 'text', doc: 'What the note says.' } },
  outputs: {
    checks: { type: 'checks', doc: 'One check.' }, files: { type: 'files', doc: 'A note.' },
    quantities: { type: 'quantities', doc: 'The width.' }, setups: { type: 'set-ups', doc: 'One program.' },
  },
  params: {
    bulk: { kind: 'number', unit: 'count', default: 0, min: 0, max: 64, step: 1, label: 'Bulk', doc: 'Files of 1 MiB to add.' },
    sameName: { kind: 'switch', default: false, label: 'Same name', doc: 'Writes the note twice.' },
  },
  examples: [{ title: 'as it comes', inputs: { width: 10, words: 'open' } }],
  compute({ width, words }, { bulk, sameName }) {
    const bulky = Array.from({ length: bulk }, (_, i): ResultFile => ({ path: `bulk/${i}.txt`, text: 'x'.repeat(1024 * 1024) }));
    const note = { path: 'note.txt', text: `${words}\n` };
    const corner = { x: 0, y: 0, z: 0 };
    return {
      ok: true,
      outputs: {
        checks: [atMost({ check: 'width', value: width, limit: 50, unit: 'mm', at: { x: 1, y: 2 }, subject: 'Width', advice: 'Choose a lesser width.' })],
        files: [note, ...(sameName ? [note] : []), ...bulky],
        quantities: { width: { value: width, unit: 'mm' } },
        setups: [{
          name: 'Set-up 1', shift: [0, 0],
          programs: [{
            file: 'programs/set-up-1-cutter-1.ngc',
            cutter: { name: '6 mm end mill', diameter: 6, flutes: 1, chipLoad: 0.1, spindleSpeed: 18000 } as never,
            kinds: [], moves: [], text: `(width ${width})\nM2\n`, reach: { min: corner, max: corner }, minutes: 1.5, cuttingMinutes: 1, seconds: [], spindleStart: 0, blocks: 2,
          }],
        }],
      },
    };
  },
});

export const catalogue = makeCatalogue([tinyDrawing, tinyResults]);
