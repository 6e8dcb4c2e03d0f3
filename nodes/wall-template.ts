import '../src/values/types.ts';
import { MOST_PAGES, wallTemplate } from '../src/papers/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_BOARD } from '../src/values/examples.ts';

export default defineNode({
  name: 'wall-template',
  title: 'Wall template',
  doc: 'Writes a template of the mounting holes in full size, to be printed, taped together and held to the wall, as a PDF. Every page carries a ruler of 100 mm to measure the print by; pages that would be empty are left out.',
  inputs: {
    board: { type: 'region', doc: 'The board: its outline is drawn, places are measured from its lower left corner.' },
    holes: { type: 'holes', many: true, doc: 'All holes: mounting holes to be drilled, cable holes to be seen.' },
  },
  outputs: { files: { type: 'files', doc: 'The template.' } },
  params: {
    paper: { kind: 'choice', options: ['A4', 'US Letter'], default: 'A4', label: 'Paper', doc: 'Size of the pages; they lie or stand, whichever are fewer.' },
    name: { kind: 'text', default: 'sign', maxLength: 60, label: 'Name', doc: 'What the work is called; on every page.' },
    file: { kind: 'text', default: 'wall-template.pdf', maxLength: 80, label: 'File name', doc: 'Name of the file.' },
  },
  examples: [{
    title: 'two holes of a small board',
    inputs: {
      board: EXAMPLE_BOARD,
      holes: [[{ centre: { x: 70, y: 100 }, diameter: 6, purpose: 'mounting' }, { centre: { x: 330, y: 100 }, diameter: 6, purpose: 'mounting', slot: { length: 2, angle: 0 } }]],
    },
  }],
  compute({ board, holes }, { file, ...params }) {
    const template = wallTemplate({ board, holes: holes.flat(), ...params });
    if (!template.ok) return { ok: false, problems: [PROBLEMS[template.why](template.pages)] };
    return { ok: true, outputs: { files: [{ path: file, base64: template.base64 }] } };
  },
});

const PROBLEMS: Readonly<Record<'no holes' | 'no board' | 'too large', (pages?: number) => Problem>> = {
  'no holes': () => ({ place: 'holes', expected: 'at least one mounting hole', found: 'none', advice: 'Wire the mounting holes to this node: a drill pattern whose purpose is mounting.' }),
  'no board': () => ({ place: 'board', expected: 'a board', found: 'an empty region', advice: 'Wire the board\'s outline to this node.' }),
  'too large': (pages) => ({ place: 'board', expected: `a template of at most ${MOST_PAGES} pages`, found: `${pages}`, advice: 'Mark out a board as large as this by its list of holes and a tape.' }),
};
