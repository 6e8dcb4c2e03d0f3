import '../src/values/types.ts';
import type { Stroke } from '../src/artwork/index.ts';
import { polylinePath } from '../src/geometry/index.ts';
import { type Missed, repairStrokes } from '../src/lettering/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';

/** Two strokes that cross at right angles. */
const CROSS: readonly Stroke[] = [
  { path: polylinePath([{ x: 0, y: 50 }, { x: 100, y: 50 }], false), width: 8 },
  { path: polylinePath([{ x: 50, y: 0 }, { x: 50, y: 100 }], false), width: 8 },
];

export default defineNode({
  name: 'repair-strokes',
  title: 'Repair strokes',
  doc: 'Changes strokes by hand, one edit after the other. Every edit finds what it is done to by its place, so the edits hold when the strokes are traced anew, scaled or shifted.',
  inputs: { strokes: { type: 'strokes', doc: 'Strokes as traced or drawn.' } },
  outputs: {
    strokes: { type: 'strokes', doc: 'The strokes with all edits done. Widths and doubts go along; doubts where something was decided by hand are gone.' },
    junctions: { type: 'junctions', doc: 'Where the repaired strokes meet, for gestures on the picture.' },
    quantities: { type: 'quantities', doc: 'Numbers of edits done, and of edits that found nothing.' },
  },
  params: {
    edits: {
      kind: 'edits', default: [], label: 'Edits',
      doc: 'What is done by hand, in this order. Places are fractions of the longer side of the box around the strokes that come in, from its lower left corner.',
      acts: {
        split: { places: [1, 1], on: ['stroke'], label: 'Cut', doc: 'Cuts the stroke at that place; a closed stroke is opened there.' },
        join: { places: [2, 2], on: ['end'], label: 'Join ends', doc: 'Makes one stroke of two ends, with a smooth line between them; both ends of one stroke close it.' },
        pair: { places: [3, 3], on: ['junction', 'arm'], label: 'Lead on', doc: 'Takes a junction and two of its arms, which become one stroke. The arms they belonged to end there, or become one stroke themselves where the junction is a crossing.' },
        move: { places: [2, 2], on: ['stroke', 'anywhere'], label: 'Move', doc: 'Moves a place of a stroke, its neighbourhood bending along; where strokes meet, they stay together.' },
        delete: { places: [1, 1], on: ['piece'], label: 'Delete', doc: 'Takes away the piece of a stroke between the junctions or ends on both sides of that place.' },
        add: { places: [2, 200], on: ['anywhere'], label: 'Draw', doc: 'Draws a smooth stroke through all places. Ends near a stroke or an end, by half a stroke width, are drawn to it.' },
      },
    },
  },
  handles: [{ kind: 'edits', param: 'edits', junctions: 'junctions', doc: 'Cut, join, lead on, move, delete and draw strokes.' }],
  examples: [{ title: 'a cross of which one arm is taken away', inputs: { strokes: CROSS }, params: { edits: [{ act: 'delete', places: [{ x: 0.8, y: 0.5 }] }] } }],
  compute({ strokes }, { edits }) {
    const repaired = repairStrokes(strokes, edits);
    return {
      ok: true,
      outputs: {
        strokes: repaired.strokes, junctions: repaired.junctions,
        quantities: { editsDone: { value: repaired.done, unit: 'count' }, editsWithoutPlace: { value: repaired.missed.length, unit: 'count' } },
      },
      cautions: repaired.missed.map(cautionOf),
    };
  },
});

function cautionOf({ edit, act, wanted, at }: Missed): Problem {
  return {
    place: `edits ${edit + 1}`, expected: `a ${wanted} to ${act}`, found: `edit ${edit + 1}, ${act}, found no ${wanted} near (${at.x.toFixed(1)}, ${at.y.toFixed(1)}) mm`,
    advice: 'It was left out; take it back, or do it again where the strokes are now.',
  };
}
