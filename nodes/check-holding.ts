import '../src/values/types.ts';
import { type Gap, holdDownGaps, partedPieces, type Piece, type Tiling } from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { type Check, atLeast } from '../src/values/check.ts';
import { EXAMPLE_BOARD } from '../src/values/examples.ts';

export default defineNode({
  name: 'check-holding',
  title: 'Check holding',
  doc: 'Measures how near the programs come to screws and clamps, cutting or at rapid rate, and tells which pieces nothing holds once they are cut round.',
  inputs: {
    setups: { type: 'set-ups', doc: 'The set-ups with their programs.' },
    tiling: { type: 'tiling', optional: true, doc: 'The set-ups as planned.' },
    holding: { type: 'holding', doc: 'How the sheet is held.' },
    board: { type: 'region', doc: 'The board.' },
    tabs: { type: 'tabs', optional: true, doc: 'The tabs that keep pieces in the sheet.' },
  },
  outputs: {
    checks: { type: 'checks', doc: 'The least gap between the cutter and a keep-out disc.' },
    quantities: { type: 'quantities', doc: 'Pieces that come loose.' },
  },
  params: {
    leastGap: { kind: 'number', unit: 'mm', default: 0, min: 0, max: 100, step: 1, label: 'Least gap', doc: 'Least distance between the cutter\'s edge and a keep-out disc.' },
  },
  examples: [{ title: 'nothing cut, nothing hit', inputs: { setups: [], tiling: undefined, holding: { holdDowns: [], areas: [], supports: [] }, board: EXAMPLE_BOARD, tabs: [] } }],
  compute({ setups, tiling, holding, board, tabs = [] }, { leastGap }) {
    const gaps = holdDownGaps(setups, holding.holdDowns);
    const outline = setups.flatMap(({ programs }) => programs).filter(({ kinds }) => kinds.includes('outline')).map(({ cutter }) => cutter.diameter);
    const loose = outline.length > 0 ? partedPieces(board, tabs, tiling, Math.max(...outline)).filter((piece) => piece.tabs === 0) : [];
    return {
      ok: true,
      outputs: { checks: gapCheck(gaps, tiling, leastGap), quantities: { loosePieces: { value: loose.length, unit: 'count' } } },
      cautions: loose.map((piece) => looseCaution(piece, tiling)),
    };
  },
});

function gapCheck(gaps: readonly Gap[], tiling: Tiling | undefined, limit: number): Check[] {
  if (gaps.length === 0) return [];
  const least = gaps.reduce((a, b) => (b.mm < a.mm ? b : a));
  const setUp = tiling?.tiles[least.setUp]?.name ?? `set-up ${least.setUp + 1}`;
  return [atLeast({
    check: 'hold-down-gap', subject: `Least gap between the cutter and a hold-down's keep-out disc (${setUp}, ${least.rapid ? 'a rapid' : 'cutting'})`, value: least.mm, limit, unit: 'mm', at: least.at,
    advice: 'Move this screw or clamp; the cutter would hit it.',
  })];
}

function looseCaution({ kind, at, area, setUp }: Piece, tiling: Tiling | undefined): Problem {
  const where = tiling?.tiles[setUp]?.name ?? 'the cut';
  return {
    expected: `tabs on every ${kind}`, found: `none on the ${kind} of ${(area / 100).toFixed(0)} cm2 at (${at.x.toFixed(0)}, ${at.y.toFixed(0)}) mm, which comes loose at the end of ${where}`,
    advice: 'Hold it from below by tape or vacuum, or leave tabs; a loose piece can be thrown by the cutter.',
  };
}
