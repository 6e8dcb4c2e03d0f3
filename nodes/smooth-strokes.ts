import '../src/values/types.ts';
import { smoothStrokes } from '../src/lettering/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { type Check, atMost } from '../src/values/check.ts';

const WAVES = 12;
const wobble = Array.from({ length: WAVES }, (_, i) => ({ kind: 'line' as const, end: { x: 4 * (i + 1), y: i % 2 ? 0 : 0.6 } }));

export default defineNode({
  name: 'smooth-strokes',
  title: 'Smooth strokes',
  doc: 'Evens out wobbles that are shorter than a stated length and leaves what is longer. Ends, sharp corners, and places where other strokes end stay where they are, straight lines and circles what they are.',
  inputs: { strokes: { type: 'strokes', doc: 'Strokes drawn or traced.' } },
  outputs: {
    strokes: { type: 'strokes', doc: 'The strokes without their wobbles, smooth but for their corners.' },
    checks: { type: 'checks', doc: 'The largest distance between a stroke before and after, and where.' },
    quantities: { type: 'quantities', doc: 'The number of strokes that were changed.' },
  },
  params: {
    length: { kind: 'number', unit: 'mm', default: 8, min: 0.1, max: 1000, step: 1, label: 'Smoothing length', doc: 'Wobbles of this length lose half of their height, those half as long nearly all, those twice as long nearly nothing. A piece between corners allows half its own length, a closed stroke a quarter.' },
    most: { kind: 'number', unit: 'mm', default: 0.5, min: 0.005, max: 100, step: 0.1, label: 'Most departure', doc: 'No place of a stroke ends up farther from where it was.' },
    corner: { kind: 'number', unit: 'deg', default: 40, min: 1, max: 180, step: 5, label: 'Corner', doc: 'Sharper breaks of direction are meant and stay.' },
    tolerance: { kind: 'number', unit: 'mm', default: 0.02, min: 0.001, max: 1, step: 0.005, label: 'Tolerance', doc: 'Greatest distance between the smoothed line and the curves that stand for it; what would move by less stays as it was drawn.' },
    touching: { kind: 'number', unit: 'mm', default: 0.2, min: 0.001, max: 10, step: 0.1, label: 'Touching', doc: 'An end this near to another stroke lies on it, and that place is kept.' },
  },
  examples: [{ title: 'a line with a wobble', inputs: { strokes: [{ path: { start: { x: 0, y: 0 }, segments: wobble, closed: false } }] }, params: { length: 12 } }],
  compute({ strokes }, { length, most, corner, tolerance, touching }, { checkpoint }) {
    const { strokes: smooth, departure, changed } = smoothStrokes(strokes, { length, most, corner, tolerance, reach: touching }, checkpoint);
    const found: Check = atMost({
      check: 'smoothing-departure', subject: 'Largest distance between a stroke before and after smoothing', value: departure?.distance ?? 0, limit: most, unit: 'mm',
      ...(departure && { at: departure.at }), advice: 'Look at this place.',
    });
    return { ok: true, outputs: { strokes: smooth, checks: [found], quantities: { smoothedStrokes: { value: changed, unit: 'count' } } } };
  },
});
