import '../src/values/types.ts';
import { type Joined, joinStrokes } from '../src/lettering/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { type Check, atMost } from '../src/values/check.ts';
import { straightStroke } from '../src/values/examples.ts';

export default defineNode({
  name: 'join-strokes',
  title: 'Join strokes',
  doc: 'Makes one stroke of strokes whose ends meet and run on smoothly. Of several partners an end takes the one it turns least to; where two are nearly alike it takes neither and says so. The strokes\' order and direction do not matter.',
  inputs: { strokes: { type: 'strokes', doc: 'Strokes in pieces.' } },
  outputs: {
    strokes: { type: 'strokes', doc: 'The strokes, joined where they meet; a stroke whose own ends meet is closed.' },
    checks: { type: 'checks', doc: 'How far a joined stroke departs from the ends that were drawn.' },
    quantities: { type: 'quantities', doc: 'Numbers of joins and of strokes after them.' },
  },
  params: {
    gap: { kind: 'number', unit: 'mm', default: 2, min: 0.001, max: 1000, step: 0.5, label: 'Gap', doc: 'Ends farther apart than this do not meet.' },
    angle: { kind: 'number', unit: 'deg', default: 30, min: 0.1, max: 120, step: 1, label: 'Angle', doc: 'Greatest turn where two ends meet, beyond the bend both strokes have there anyway.' },
    blend: { kind: 'number', unit: 'mm', default: 5, min: 0.01, max: 1000, step: 0.5, label: 'Blend', doc: 'Length of each end that the bridge takes the place of, so that it bends gently; never more than a quarter of a stroke.' },
    margin: { kind: 'number', unit: 'deg', default: 3, min: 0, max: 60, step: 0.5, label: 'Margin', doc: 'Where an end\'s best and second best partner differ by less than this, it is left alone.' },
    departure: { kind: 'number', unit: 'mm', default: 0.5, min: 0, max: 100, step: 0.1, label: 'Departure', doc: 'A bridge farther than this from the ends that were drawn is worth a caution.' },
  },
  examples: [{
    title: 'two halves of a line with a small gap become one',
    inputs: { strokes: [straightStroke(0, 0, 40, 0), straightStroke(41, 0, 80, 0)] },
  }],
  compute({ strokes }, { gap, angle, blend, margin, departure }) {
    const joined = joinStrokes(strokes, { gap, angle, blend, margin });
    return {
      ok: true,
      outputs: {
        strokes: joined.strokes,
        checks: joined.joins.length === 0 ? [] : [departureOf(joined, departure)],
        quantities: { joins: { value: joined.joins.length, unit: 'count' }, joinedStrokes: { value: joined.strokes.length, unit: 'count' } },
      },
      cautions: joined.undecided.map(({ x, y }): Problem => ({
        expected: 'one best partner for each end', found: `two nearly alike at (${x.toFixed(1)}, ${y.toFixed(1)}) mm`, advice: 'Nothing was joined there: move one of the ends, or join them by hand.',
      })),
    };
  },
});

function departureOf({ joins }: Joined, limit: number): Check {
  const worst = joins.reduce((a, b) => (b.departure > a.departure ? b : a));
  return atMost({
    check: 'join-departure', subject: 'Largest distance of a drawn end from its joined stroke', value: worst.departure, limit, unit: 'mm', at: worst.at,
    advice: 'Look at this place: move the ends together, or blend over a shorter length.',
  }, 'caution');
}
