import '../src/values/types.ts';
import { setUpSheets } from '../src/papers/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_CUTTER, EXAMPLE_MACHINE, EXAMPLE_STOCK } from '../src/values/examples.ts';

export default defineNode({
  name: 'set-up-sheets',
  title: 'Set-up sheets',
  doc: 'Writes what the bench needs to cut the work without guessing, as a PDF to print: a cover with the order of work, then a page for every set-up with its drawing to scale, its programs, and what to look at before starting.',
  inputs: {
    setups: { type: 'set-ups', doc: 'The set-ups with their programs.' },
    tiling: { type: 'tiling', optional: true, doc: 'The set-ups as planned, where the sheet is cut in several.' },
    stock: { type: 'stock', doc: 'The sheet.' },
    machine: { type: 'machine', doc: 'The machine, for its bed.' },
    board: { type: 'region', optional: true, doc: 'The board.' },
    channel: { type: 'channel', optional: true, doc: 'The groove.' },
    holes: { type: 'holes', many: true, optional: true, doc: 'All holes; those for pins come with the registration.' },
    registration: { type: 'registration', optional: true, doc: 'Pins and dowel holes.' },
    holding: { type: 'holding', optional: true, doc: 'Screws, clamps, tape or vacuum, and supports.' },
    checks: { type: 'checks', many: true, optional: true, doc: 'What was checked: failed checks mark every page as a draft.' },
  },
  outputs: { files: { type: 'files', doc: 'The set-up sheets.' } },
  params: {
    paper: { kind: 'choice', options: ['A4', 'US Letter'], default: 'A4', label: 'Paper', doc: 'Size of the pages; they lie or stand as the drawings need.' },
    name: { kind: 'text', default: 'sign', maxLength: 60, label: 'Name', doc: 'What the work is called; at the head of every page.' },
    notes: { kind: 'text', default: '', maxLength: 4000, label: 'Notes', doc: 'What the bench should know besides; on the cover.' },
    file: { kind: 'text', default: 'set-up-sheets.pdf', maxLength: 80, label: 'File name', doc: 'Name of the file.' },
  },
  examples: [{
    title: 'one set-up with one program',
    inputs: {
      setups: [{
        name: 'set-up 1', shift: [0, 0],
        programs: [{
          file: 'programs/set-up-1-cutter-1.ngc', cutter: EXAMPLE_CUTTER, kinds: ['groove'], moves: [{ kind: 'line', to: { x: 300, y: 100, z: -6 }, feed: 1800 }], text: '',
          reach: { min: { x: 97, y: 97, z: -6 }, max: { x: 303, y: 103, z: 10 } }, minutes: 2.4, cuttingMinutes: 2, seconds: [], spindleStart: 5, blocks: 40,
        }],
      }],
      tiling: undefined, stock: EXAMPLE_STOCK, machine: EXAMPLE_MACHINE, board: EXAMPLE_BOARD, channel: EXAMPLE_CHANNEL, holes: [], registration: undefined, holding: undefined, checks: [],
    },
  }],
  compute({ holes, checks, ...job }, { file, ...params }) {
    if (job.setups.length === 0) return { ok: false, problems: [NOTHING] };
    return { ok: true, outputs: { files: [{ path: file, base64: setUpSheets({ ...job, ...params, holes: holes.flat(), checks: checks.flat() }) }] } };
  },
});

const NOTHING: Problem = { place: 'setups', expected: 'at least one set-up', found: 'none', advice: 'Wire the set-ups of emit-program to this node.' };
