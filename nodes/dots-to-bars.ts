import '../src/values/types.ts';
import { type BarDirection, dotsToBars } from '../src/lettering/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { type Check, atLeast } from '../src/values/check.ts';
import { straightStroke } from '../src/values/examples.ts';

/** Dense strips are commonly cut every 50 / 3 mm; a little more, so that one module fits. */
const MODULE = 16.7;

const DIRECTIONS: Readonly<Record<'along the dot' | 'along the stems' | 'level' | 'at the angle', BarDirection>> =
  { 'along the dot': 'dot', 'along the stems': 'stems', level: 'level', 'at the angle': 'angle' };

export default defineNode({
  name: 'dots-to-bars',
  title: 'Dots to bars',
  doc: 'Makes bars of dots, long enough for one module of the light strip, centred where the dot was. A dot is a short stroke that touches no other, or a small round shape that tracing left; larger shapes stay.',
  inputs: {
    strokes: { type: 'strokes', doc: 'Strokes with dots among them.' },
    outlines: { type: 'outlines', optional: true, doc: 'Shapes that tracing left.' },
  },
  outputs: {
    strokes: { type: 'strokes', doc: 'The strokes, bars in the place of dots; bars from shapes come last.' },
    rest: { type: 'outlines', doc: 'Shapes that are no dots, as they were.' },
    checks: { type: 'checks', doc: 'How near the bars come to other centre lines, and where.' },
    quantities: { type: 'quantities', doc: 'The number of bars.' },
  },
  params: {
    shortest: { kind: 'number', unit: 'mm', default: 12, min: 0, max: 1000, step: 0.5, label: 'Dots up to', doc: 'Strokes shorter than this that touch no other are dots; closed ones are measured across.' },
    module: { kind: 'number', unit: 'mm', default: MODULE, min: 0.1, max: 1000, step: 0.1, label: 'Module length', doc: 'Least length of a bar\'s centre line: the shortest piece the strip may be cut to. 16.7 mm is common practice with dense strips, others have 25, 50 or 100 mm; the strip\'s data sheet says.' },
    direction: { kind: 'choice', options: ['along the dot', 'along the stems', 'level', 'at the angle'], default: 'along the dot', label: 'Direction', doc: 'Which way bars lie. A dot as long as wide has no direction of its own and lies along the stems; stems are what runs within 45 degrees of upright.' },
    angle: { kind: 'number', unit: 'deg', default: 45, min: -180, max: 180, step: 1, label: 'Angle', doc: 'Direction of bars that lie at an angle, counter-clockwise from level.' },
    largest: { kind: 'number', unit: 'mm', default: 30, min: 0.1, max: 1000, step: 1, label: 'Round shapes up to', doc: 'Round shapes without holes that are no larger across become bars.' },
    clearance: { kind: 'number', unit: 'mm', default: 14, min: 0, max: 1000, step: 0.5, label: 'Clearance', doc: 'Least distance between a bar and other centre lines: the groove\'s width and the wall beside it.' },
    touching: { kind: 'number', unit: 'mm', default: 0.2, min: 0.001, max: 10, step: 0.1, label: 'Touching', doc: 'A short stroke this near to another belongs to it and is no dot.' },
  },
  examples: [{
    title: 'the dot of an i',
    inputs: { strokes: [straightStroke(0, 0, 8, 60), straightStroke(10, 80, 10.5, 82)], outlines: undefined },
  }],
  compute({ strokes, outlines = [] }, { shortest, module, direction, angle, largest, clearance, touching }) {
    const { strokes: changed, rest, bars } = dotsToBars(strokes, outlines, { shortest, largest, length: module, direction: DIRECTIONS[direction], angle, reach: touching });
    const close = bars.filter((bar) => bar.clearance < clearance);
    const nearest = bars.reduce<typeof bars[number] | undefined>((a, b) => (a === undefined || b.clearance < a.clearance ? b : a), undefined);
    const found: Check[] = nearest && nearest.clearance < Infinity ? [atLeast({
      check: 'bar-clearance', subject: 'Least distance between a bar and another centre line', value: nearest.clearance, limit: clearance, unit: 'mm', at: nearest.at,
      advice: 'Choose another direction for the bars, or move the dot.',
    }, 'caution')] : [];
    return {
      ok: true,
      outputs: { strokes: changed, rest, checks: found, quantities: { bars: { value: bars.length, unit: 'count' } } },
      cautions: close.map(({ centre: { x, y }, clearance: gap }): Problem => ({
        expected: `bars ${clearance} mm clear of other strokes`, found: `the bar at (${x.toFixed(1)}, ${y.toFixed(1)}) mm only ${gap.toFixed(1)} mm from one`,
        advice: 'Choose another direction for the bars, or move the dot.',
      })),
    };
  },
});
