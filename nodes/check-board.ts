import '../src/values/types.ts';
import { leastEdgeDistance, roundedCorners } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { atLeastGraded, atMost } from '../src/values/check.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_CUTTER } from '../src/values/examples.ts';

export default defineNode({
  name: 'check-board',
  title: 'Check board',
  doc: 'Holds a board, above all a drawn one, against the lettering and the cutter: the groove lies inside it by a margin, and the cutter fits its inner corners, or they are counted and the worst is named.',
  inputs: {
    board: { type: 'region', doc: 'The board.' },
    channel: { type: 'channel', doc: 'The groove.' },
    cutter: { type: 'cutter', doc: 'The cutter that parts the board from the sheet.' },
  },
  outputs: { checks: { type: 'checks', doc: 'Least distance from the groove to the edge, and what is left in inner corners.' } },
  params: {
    margin: { kind: 'number', unit: 'mm', default: 20, min: 0, max: 1000, step: 1, label: 'Margin', doc: 'Distance from the groove to the edge that is wanted; less is worth a caution, a groove that leaves the board fails.' },
    cornerLeft: { kind: 'number', unit: 'mm', default: 0.1, min: 0.01, max: 100, step: 0.05, label: 'Left in corners', doc: 'A cutter leaves inner corners rounded to its radius; more than this left in one is worth a caution.' },
  },
  examples: [{ title: 'a plain board', inputs: { board: EXAMPLE_BOARD, channel: EXAMPLE_CHANNEL, cutter: EXAMPLE_CUTTER } }],
  compute({ board, channel, cutter }, { margin, cornerLeft }) {
    const edge = leastEdgeDistance(channel.region, board);
    const rounded = roundedCorners(board, cutter.diameter, cornerLeft);
    const [worst] = rounded;
    return {
      ok: true,
      outputs: {
        checks: [
          ...(edge ? [atLeastGraded({ check: 'board-margin', subject: 'Least distance from the groove to the edge of the board', value: edge.distance, unit: 'mm', at: edge.at, advice: 'Move or shrink the lettering, or draw a larger board.' }, { refuse: 0, caution: margin })] : []),
          atMost({
            check: 'board-corners', subject: `Most left in an inner corner of the board${worst ? ` (rounded: ${rounded.length})` : ''}`, value: worst?.left ?? 0, limit: cornerLeft, unit: 'mm', ...(worst && { at: worst.at }),
            advice: `Round inner corners to a radius of ${cutter.diameter / 2} mm or more, which also keeps acrylic from cracking there, or take a thinner cutter.`,
          }, 'caution'),
        ],
      },
    };
  },
});
