import '../src/values/types.ts';
import { trimEnds } from '../src/lettering/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { straightStroke } from '../src/values/examples.ts';

export default defineNode({
  name: 'trim-ends',
  title: 'Trim or lengthen ends',
  doc: 'Makes strokes shorter or longer at their free ends, along their own course. Ends that lie on another stroke stay unless all are asked for; closed strokes have no ends.',
  inputs: { strokes: { type: 'strokes', doc: 'Strokes to trim or lengthen.' } },
  outputs: {
    strokes: { type: 'strokes', doc: 'The strokes with their new ends.' },
    quantities: { type: 'quantities', doc: 'The number of ends that were changed.' },
  },
  params: {
    length: { kind: 'number', unit: 'mm', default: 0, min: -1000, max: 1000, step: 0.5, label: 'Length', doc: 'Length added to each end; negative takes it off.' },
    ends: { kind: 'choice', options: ['free ends', 'all ends'], default: 'free ends', label: 'Ends', doc: 'Free ends lie on no stroke, not even on another\'s end.' },
    course: { kind: 'choice', options: ['straight', 'with the bend'], default: 'straight', label: 'Goes on', doc: 'How an end goes on: straight ahead, or with the bend it has over the length that is added, by a quarter turn at most.' },
    vanishing: { kind: 'choice', options: ['keep', 'drop'], default: 'keep', label: 'Too short', doc: 'Whether strokes no longer than what would be taken off are kept as they are or dropped.' },
    touching: { kind: 'number', unit: 'mm', default: 0.2, min: 0.001, max: 10, step: 0.1, label: 'Touching', doc: 'An end this near to a stroke lies on it.' },
  },
  examples: [{ title: 'a stroke longer at both ends', inputs: { strokes: [straightStroke(0, 0, 40, 0)] }, params: { length: 5 } }],
  compute({ strokes }, { length, ends, course, vanishing, touching }) {
    const trimmed = trimEnds(strokes, { length, ends: ends === 'all ends' ? 'all' : 'free', course: course === 'straight' ? 'straight' : 'bend', vanishing, reach: touching });
    return {
      ok: true,
      outputs: { strokes: trimmed.strokes, quantities: { changedEnds: { value: trimmed.ends, unit: 'count' } } },
      cautions: trimmed.vanished.map(({ stroke, at: { x, y } }): Problem => ({
        place: 'length', expected: 'strokes longer than what is taken off their ends',
        found: `stroke ${stroke + 1} at (${x.toFixed(1)}, ${y.toFixed(1)}) mm too short, which was ${vanishing === 'keep' ? 'kept as it was' : 'dropped'}`, advice: 'Take off less, or make a bar of it.',
      })),
    };
  },
});
