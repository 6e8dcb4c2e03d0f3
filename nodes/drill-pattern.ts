import '../src/values/types.ts';
import { type Point, emptyRegion } from '../src/geometry/index.ts';
import {
  type Pattern, type RowSpacing, clearArea, cornerPlaces, placesAlongOutline, placesByHand, strokeEnds,
} from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_BOARD } from '../src/values/examples.ts';

export default defineNode({
  name: 'drill-pattern',
  title: 'Drill pattern',
  doc: 'Places holes: at the ends of the strokes (for cables), in the board\'s corners, along its outline, or by hand. All but those at stroke ends keep clear of grooves, edges and other holes.',
  inputs: {
    channel: { type: 'channel', optional: true, doc: 'The groove: its ends carry cable holes, and other holes keep clear of it.' },
    board: { type: 'region', optional: true, doc: 'The board that other holes must lie in.' },
    others: { type: 'holes', many: true, optional: true, doc: 'Holes that are there already, such as those for cables: new ones keep clear of them.' },
  },
  outputs: { holes: { type: 'holes', doc: 'The holes, all through the sheet.' } },
  params: {
    pattern: { kind: 'choice', options: ['ends of strokes', 'corners', 'along the outline', 'corners and between', 'a number along the outline', 'by hand'], default: 'corners', label: 'Pattern', doc: 'Where the holes go. “Corners and between” puts holes in the corners first, then evenly between them, no farther apart than the pitch. A number of four or more also takes the corners first, and the rest where holes are farthest apart.' },
    purpose: { kind: 'choice', options: ['mounting', 'cable'], default: 'mounting', label: 'For', doc: 'What the holes are for.' },
    diameter: { kind: 'number', unit: 'mm', default: 6, min: 0.5, max: 200, step: 0.1, label: 'Hole diameter', doc: 'Diameter of each hole.' },
    edgeDistance: { kind: 'number', unit: 'mm', default: 15, min: 0, max: 1000, step: 1, label: 'Edge distance', doc: 'Least distance from a hole\'s centre to the edge of the board; twice the diameter is common practice.' },
    grooveDistance: { kind: 'number', unit: 'mm', default: 8, min: 0, max: 1000, step: 1, label: 'Groove distance', doc: 'Least material between a hole and a groove or another hole.' },
    pitch: { kind: 'number', unit: 'mm', default: 300, min: 5, max: 10000, step: 5, label: 'Pitch', doc: 'Greatest distance between holes along the outline.' },
    count: { kind: 'number', unit: 'count', default: 6, min: 1, max: 500, step: 1, label: 'Number of holes', doc: 'How many holes a number along the outline makes.' },
    reach: { kind: 'number', unit: 'mm', default: 100, min: 0, max: 5000, step: 5, label: 'Reach', doc: 'How far a hole may slide along the outline to the nearest clear place; where there is none, it is left out and named.' },
    places: { kind: 'points', default: [], label: 'Places', doc: 'Centres of holes put by hand.' },
  },
  handles: [{
    kind: 'places', param: 'places', from: 'holes', sets: { pattern: 'by hand' },
    doc: 'Drag a hole, add one, or take one away; from the first change on, holes go where they were put by hand.',
  }],
  examples: [{ title: 'four corners', inputs: { channel: undefined, board: EXAMPLE_BOARD, others: [] }, params: { pattern: 'corners' } }],
  compute({ channel, board = emptyRegion, others }, { pattern, purpose, diameter, edgeDistance, grooveDistance, pitch, count, reach, places }) {
    const clear = () => clearArea(board, channel?.region, others.flat(), { edgeDistance, apart: grooveDistance + diameter / 2, tolerance: 0.01 });
    const row = (spacing: RowSpacing) => placesAlongOutline(board, clear(), { ...spacing, edgeDistance, reach, apart: diameter + grooveDistance });
    const patterns: Record<typeof pattern, () => Pattern> = {
      'ends of strokes': () => ({ centres: strokeEnds(channel?.centreLines ?? [], 2 * diameter), unclear: [] }),
      corners: () => cornerPlaces(clear(), 2 * diameter),
      'along the outline': () => row({ corners: false, holes: { pitch } }),
      'corners and between': () => row({ corners: true, holes: { pitch } }),
      'a number along the outline': () => row({ corners: count >= 4, holes: { count } }),
      'by hand': () => placesByHand(places, clear()),
    };
    const { centres, unclear } = patterns[pattern]();
    if (centres.length === 0 && pattern !== 'by hand') return { ok: false, problems: [noPlace(pattern)] };
    return { ok: true, outputs: { holes: centres.map((centre) => ({ centre, diameter, purpose })) }, cautions: unclear.map((point) => notClear(point, pattern, reach)) };
  },
});

function noPlace(pattern: string): Problem {
  const ends = pattern === 'ends of strokes';
  return {
    place: 'pattern', expected: 'at least one place for a hole', found: 'none',
    advice: ends ? 'Wire the groove to this node.' : 'Wire the board to this node, widen its margin, or lower the edge and groove distances.',
  };
}

function notClear({ x, y }: Point, pattern: string, reach: number): Problem {
  const byHand = pattern === 'by hand';
  return {
    place: byHand ? 'places' : 'reach',
    expected: `a place clear of grooves, edges and other holes${byHand ? '' : ` within ${reach} mm along the outline`}`, found: `(${x.toFixed(1)}, ${y.toFixed(1)}) mm, which is not`,
    advice: byHand ? 'Move this hole.' : 'No hole was put there; change the reach, the pitch or the distances.',
  };
}
