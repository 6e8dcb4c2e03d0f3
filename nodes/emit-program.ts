import '../src/values/types.ts';
import { MOST_MOVES, planSetUps } from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_CUTTER, EXAMPLE_MACHINE } from '../src/values/examples.ts';

export default defineNode({
  name: 'emit-program',
  title: 'Emit program',
  doc: 'Writes the programs of every set-up in RS274/NGC, one for each cutter in the order to run them, as the machine\'s controller wants them. Zero is the sheet\'s lower left corner in the first set-up, and its top face; it stays there when the sheet is moved on.',
  inputs: {
    passes: { type: 'passes', doc: 'The passes in their running order.' },
    machine: { type: 'machine', doc: 'The machine with its controller.' },
    tiling: { type: 'tiling', optional: true, doc: 'The set-ups, where the sheet is cut in several.' },
    registration: { type: 'registration', optional: true, doc: 'How the set-ups find their place: its corrections are written into the programs.' },
  },
  outputs: { setups: { type: 'set-ups', doc: 'The set-ups with their programs.' } },
  params: {
    name: { kind: 'text', default: 'sign', maxLength: 60, label: 'Name', doc: 'What the work is called; the first comment of every program.' },
    chordTolerance: { kind: 'number', unit: 'mm', default: 0.004, min: 0.001, max: 0.1, step: 0.001, label: 'Chord tolerance', doc: 'Greatest deviation where an arc must be written as lines.' },
  },
  examples: [{
    title: 'one drilled hole',
    inputs: {
      machine: EXAMPLE_MACHINE, tiling: undefined, registration: undefined,
      passes: [{
        kind: 'hole', name: 'hole 1', cutter: EXAMPLE_CUTTER, start: { x: 50, y: 50, z: 2 },
        moves: [{ kind: 'line', to: { x: 50, y: 50, z: -3 }, feed: 540 }],
      }],
    },
  }],
  compute({ passes, machine, tiling, registration }, { name, chordTolerance }) {
    const problem = nothingToCut(passes.length) ?? tooMuch(passes.reduce((sum, { moves }) => sum + moves.length, 0));
    if (problem) return { ok: false, problems: [problem] };
    return { ok: true, outputs: { setups: planSetUps({ passes, machine, name, tolerance: chordTolerance, tiling, corrections: registration?.corrections }) } };
  },
});

function nothingToCut(passes: number): Problem | undefined {
  if (passes > 0) return undefined;
  return { place: 'passes', expected: 'at least one pass', found: 'none', advice: 'Wire the passes of grooves, holes or outlines to this node.' };
}

/** A program that cannot be read back cannot be proved; better said before it is written. */
function tooMuch(moves: number): Problem | undefined {
  if (moves <= MOST_MOVES) return undefined;
  return {
    place: 'passes', expected: `at most ${MOST_MOVES} moves`, found: `${moves}`,
    advice: 'Cut deeper layers, take a wider stepover or a steeper ramp, or let the machine cut arcs.',
  };
}
