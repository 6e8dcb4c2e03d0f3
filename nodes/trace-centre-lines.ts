import '../src/values/types.ts';
import type { Outline } from '../src/artwork/index.ts';
import { type Junction, type TightBend, tightBends, type TracedStroke, type Tracing, traceOutlines } from '../src/lettering/index.ts';
import { polylinePath } from '../src/geometry/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { type Check, atLeast, atMost } from '../src/values/check.ts';

/** A stem of 40 x 6 mm. */
const STEM: Outline = { paths: [polylinePath([{ x: 0, y: 0 }, { x: 6, y: 0 }, { x: 6, y: 40 }, { x: 0, y: 40 }], true)], fillRule: 'nonzero' };

export default defineNode({
  name: 'trace-centre-lines',
  title: 'Trace centre lines',
  doc: 'Finds the strokes a pen would have drawn in filled lettering, whatever its width. Where strokes cross or meet it decides which arms belong together, and says how sure it is. Shapes that are no strokes are left as outlines.',
  inputs: { outlines: { type: 'outlines', doc: 'Filled lettering.' } },
  outputs: {
    strokes: { type: 'strokes', doc: 'Centre lines, each with the width the lettering has there on average.' },
    rest: { type: 'outlines', doc: 'Shapes that are no strokes, as they were.' },
    checks: { type: 'checks', doc: 'The junction that was decided by the smallest margin; parts of the lettering that no stroke covers.' },
    quantities: { type: 'quantities', doc: 'Numbers of strokes, junctions and shapes left.' },
  },
  params: {
    tolerance: { kind: 'number', unit: 'mm', default: 0.02, min: 0.001, max: 1, step: 0.005, label: 'Tolerance', doc: 'Greatest distance between a centre line found and the curves that stand for it.' },
    leastConfidence: { kind: 'number', unit: 'ratio', default: 0.1, min: 0, max: 1, step: 0.05, label: 'Least confidence', doc: 'Strokes decided by a smaller margin are worth a caution; 0 cautions never.' },
  },
  examples: [{ title: 'one stem', inputs: { outlines: [STEM] } }],
  compute({ outlines }, { tolerance, leastConfidence }, { checkpoint }) {
    const tracing = traceOutlines(outlines, { tolerance }, () => checkpoint(0.5));
    const { strokes, regions, junctions } = tracing;
    if (strokes.length === 0) return { ok: false, problems: [nothingTraced(tracing)] };
    return {
      ok: true,
      outputs: {
        strokes, rest: regions.map(({ region }): Outline => ({ paths: region.loops.map((loop) => polylinePath(loop, true)), fillRule: 'nonzero' })),
        checks: [confidenceOf(strokes, leastConfidence), coverOf(tracing)],
        quantities: {
          tracedStrokes: { value: strokes.length, unit: 'count' }, tracedJunctions: { value: junctions.length, unit: 'count' },
          shapesLeft: { value: regions.length, unit: 'count' }, leastConfidence: { value: least(strokes, junctions), unit: 'ratio' },
        },
      },
      cautions: cautionsOf(tracing),
    };
  },
});

function nothingTraced({ regions, outlines }: Tracing): Problem {
  const found = regions.length > 0 ? `${regions.length} shapes that are no strokes` : `${outlines.length} outlines without area`;
  return { expected: 'lettering made of strokes', found, advice: 'Give filled lettering, or use “Import strokes” for lines.' };
}

const least = (strokes: readonly TracedStroke[], junctions: readonly Junction[]): number => [...strokes, ...junctions].reduce((sum, { confidence }) => Math.min(sum, confidence), 1);

function confidenceOf(strokes: readonly TracedStroke[], limit: number): Check {
  const worst = strokes.reduce((a, b) => (b.confidence < a.confidence ? b : a));
  const at = worst.doubts[0]?.at ?? worst.path.start;
  return atLeast({
    check: 'tracing-confidence', subject: 'Smallest margin a stroke was decided by', value: worst.confidence, limit, unit: 'ratio', at,
    advice: 'Look at which strokes run through here: if a pen would have gone otherwise, lead the right arms on with “Repair strokes”. Ask for less only where you have looked.',
  }, 'caution');
}

function coverOf({ uncovered: { length: count, 0: at } }: Tracing): Check {
  return atMost({
    check: 'lettering-without-stroke', subject: 'Parts of the lettering that no stroke covers', value: count, limit: 0, unit: 'count', ...(at && { at }),
    advice: 'Look at each: what should be lit is added with “Draw” in “Repair strokes”.',
  }, 'caution');
}

function cautionsOf({ regions, crumbs, strokes }: Tracing): Problem[] {
  const tight = strokes.flatMap(({ path, widths }) => tightBends(path, widths));
  return [
    ...(tight.length > 0 ? [tooTight(tight)] : []),
    ...regions.map(({ says, at }): Problem => ({ expected: 'strokes', found: `${says} at (${at.x.toFixed(1)}, ${at.y.toFixed(1)}) mm`, advice: 'It is left as an outline without a groove. If it should be lit, draw its strokes with “Draw” in “Repair strokes”.' })),
    ...(crumbs > 0 ? [{ expected: 'shapes as wide as a stroke', found: `${crumbs} far smaller ones, which were dropped`, advice: 'If they are stray specks, there is nothing to do. If they were meant, make them as wide as the strokes in the drawing.' }] : []),
  ];
}

/** All tight bends in one sentence, with the tightest one's place: each is also a doubt of its stroke. */
function tooTight(tight: readonly TightBend[]): Problem {
  const { at, radius, width } = tight.reduce((a, b) => (b.radius / b.width < a.radius / a.width ? b : a));
  return {
    expected: 'bends of at least half the width of the lettering',
    found: `${tight.length} tighter ${tight.length === 1 ? 'one' : 'ones'}, ${radius.toPrecision(2)} mm where it is ${width.toPrecision(3)} mm wide at (${at.x.toFixed(1)}, ${at.y.toFixed(1)}) mm`,
    advice: 'A groove as wide as the lettering overlaps itself there: choose a narrower groove, or widen the bend with “Move” in “Repair strokes”.',
  };
}
