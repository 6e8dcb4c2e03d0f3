import '../src/values/types.ts';
import { EDGE_DIAMETERS, type HoleDistances, holeDistances } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { type Check, type Finding, atLeast, atLeastGraded } from '../src/values/check.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL } from '../src/values/examples.ts';

export default defineNode({
  name: 'check-holes',
  title: 'Check holes',
  doc: 'Measures every hole against the edge of the board, the groove and the other holes. A cable hole must stay inside the groove, any other clear of it. The limits are common practice for cast acrylic.',
  inputs: {
    holes: { type: 'holes', many: true, doc: 'All holes.' },
    board: { type: 'region', doc: 'The board.' },
    channel: { type: 'channel', doc: 'The groove.' },
  },
  outputs: { checks: { type: 'checks', doc: 'The worst hole for each distance.' } },
  params: {
    refuseWall: { kind: 'number', unit: 'mm', default: 3, min: 0, max: 100, step: 0.5, label: 'Refuse walls under', doc: 'Less material beside a hole fails the check.' },
    cautionWall: { kind: 'number', unit: 'mm', default: 5, min: 0, max: 100, step: 0.5, label: 'Caution under', doc: 'Less material beside a hole is worth a caution.' },
  },
  examples: [{
    title: 'one hole in a plain board',
    inputs: { holes: [[{ centre: { x: 70, y: 70 }, diameter: 6, purpose: 'mounting' }]], board: EXAMPLE_BOARD, channel: EXAMPLE_CHANNEL },
  }],
  compute({ holes, board, channel }, { refuseWall, cautionWall }) {
    const limits = { refuse: refuseWall, caution: cautionWall };
    const all = holeDistances(holes.flat(), board, channel.region);
    const mounting = all.filter(({ hole }) => hole.purpose === 'mounting');
    const cable = all.filter(({ hole }) => hole.purpose === 'cable');
    const wall = (found: Found) => atLeastGraded({ ...found, advice: 'Move or leave out this hole.' }, limits);
    return {
      ok: true,
      outputs: {
        checks: [
          ...worst(all, 'hole-to-edge', 'Least distance from a hole\'s centre to the edge, in hole diameters', ({ edge, hole }) => edge / hole.diameter, (found) =>
            atLeastGraded({ ...found, unit: '', advice: 'Widen the board\'s margin or move this hole.' }, EDGE_DIAMETERS)),
          ...worst(mounting, 'hole-to-groove', 'Least wall between a hole and the groove', ({ groove }) => groove, wall),
          ...worst(cable, 'cable-hole-in-groove', 'Least distance from a cable hole to the groove\'s wall', ({ insideGroove }) => clearOfChords(insideGroove, channel.tolerance), (found) =>
            atLeast({ ...found, limit: 0, advice: 'Take a smaller cable hole, or move it to the end of a stroke.' })),
          ...worst(all, 'hole-to-hole', 'Least wall between two holes', ({ neighbour }) => neighbour, wall),
        ],
      },
    };
  },
});

/** A hole as wide as the groove touches its walls; that their chords lie a hair inside does not count. */
function clearOfChords(distance: number, tolerance: number): number {
  return Math.abs(distance) <= tolerance ? 0 : distance;
}

type Found = Omit<Finding, 'limit' | 'advice'>;

/** Judges the hole with the least distance of one kind; nothing to judge where no hole has such a distance. */
function worst(
  all: readonly HoleDistances[], check: string, subject: string, measure: (one: HoleDistances) => number, judge: (found: Found) => Check,
): Check[] {
  const finite = all.filter((one) => Number.isFinite(measure(one)));
  if (finite.length === 0) return [];
  const least = finite.reduce((a, b) => (measure(b) < measure(a) ? b : a));
  return [judge({ check, subject, unit: 'mm', value: measure(least), at: least.hole.centre })];
}
