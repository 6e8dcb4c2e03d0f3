import '../src/values/types.ts';
import { regionArea } from '../src/geometry/index.ts';
import { type Channel, movedSign, type Nest, nestBoards, type Sign, together } from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { type Check, type Quantities, atMost } from '../src/values/check.ts';
import { EXAMPLE_CHANNEL, EXAMPLE_STOCK, rectangle } from '../src/values/examples.ts';

export default defineNode({
  name: 'nest-signs',
  title: 'Nest signs',
  doc: 'Lays several signs, or copies of one, on one sheet so that little of it is wasted: by their real outlines, a stated distance apart, a quarter turned where that helps. What comes out is one work: a board of several pieces with its grooves and holes.',
  inputs: {
    boards: { type: 'region', many: true, doc: 'The boards, one wire for each sign.' },
    channels: { type: 'channel', many: true, optional: true, doc: 'Their grooves, in the order of the boards, alike in width and depth.' },
    holes: { type: 'holes', many: true, optional: true, doc: 'Their holes, in the order of the boards.' },
    stock: { type: 'stock', doc: 'The sheet.' },
  },
  outputs: {
    board: { type: 'region', doc: 'All boards where they lie.' },
    channel: { type: 'channel', doc: 'All grooves.' },
    holes: { type: 'holes', doc: 'All holes.' },
    checks: { type: 'checks', doc: 'Whether every sign found room.' },
    quantities: { type: 'quantities', doc: 'How much of the sheet is used, and the least height boards of that area could take.' },
  },
  params: {
    copies: { kind: 'number', unit: 'count', default: 1, min: 1, max: 200, step: 1, label: 'Copies', doc: 'How often each sign is cut.' },
    spacing: { kind: 'number', unit: 'mm', default: 12, min: 0, max: 1000, step: 1, label: 'Apart', doc: 'Least distance between two boards: the cutter\'s diameter and a web that holds.' },
    edge: { kind: 'number', unit: 'mm', default: 15, min: 0, max: 1000, step: 1, label: 'From the edge', doc: 'Least distance between a board and the sheet\'s edge.' },
    turn: { kind: 'switch', default: true, label: 'May be turned', doc: 'Whether a board may lie a quarter turned; not where a sheet has a grain.' },
  },
  examples: [{ title: 'two small boards', inputs: { boards: [rectangle(0, 0, 220, 60), rectangle(0, 0, 100, 50)], channels: [{ ...EXAMPLE_CHANNEL, centreLines: [], region: rectangle(20, 20, 60, 10) }], holes: [], stock: EXAMPLE_STOCK } }],
  compute({ boards, channels, holes, stock }, { copies, ...request }, { checkpoint }) {
    const problem = fault(boards.length, channels, holes.length) ?? (boards.some((board) => !(regionArea(board) > 0)) ? NO_AREA : undefined);
    if (problem) return { ok: false, problems: [problem] };
    const signs = boards.flatMap((board, i): Sign[] => Array.from({ length: copies }, () => ({ board, channel: channels[i], holes: holes[i] ?? [] })));
    const nest = nestBoards({ sheet: stock, boards: signs.map(({ board }) => board), ...request }, checkpoint);
    const placed = signs.flatMap((sign, i) => (nest.moves[i] ? [movedSign(sign, nest.moves[i])] : []));
    if (placed.length === 0) return { ok: false, problems: [NO_ROOM] };
    const { board, channel = NO_GROOVE, holes: all } = together(placed);
    return { ok: true, outputs: { board, channel, holes: all, checks: [roomCheck(nest, copies)], quantities: useOf(nest, regionArea(board), stock) } };
  },
});

const NO_GROOVE: Channel = { centreLines: [], region: { loops: [] }, width: 1, depth: 0, tolerance: 0.01 };

const NO_AREA: Problem = { place: 'boards', expected: 'boards with an area', found: 'an empty one', advice: 'Mend the step that makes it.' };
const NO_ROOM: Problem = { place: 'stock', expected: 'a sheet on which at least one sign has room', found: 'none has', advice: 'Take a larger sheet, or less room between boards and at the edge.' };

function fault(boards: number, channels: readonly Channel[], holes: number): Problem | undefined {
  if (boards === 0) return { place: 'boards', expected: 'at least one board', found: 'none', advice: 'Wire a board to this node.' };
  const [more, place] = channels.length > boards ? [channels.length, 'channels'] : [holes, 'holes'];
  if (more > boards) return { place, expected: `at most ${boards}, one for each board`, found: `${more}`, advice: 'Wire a board for each, in the same order.' };
  const [first] = channels;
  const odd = channels.find(({ width, depth }) => width !== first!.width || depth !== first!.depth);
  return odd && { place: 'channels', expected: `grooves alike: ${first!.width} mm wide, ${first!.depth} mm deep`, found: `${odd.width} mm wide, ${odd.depth} mm deep`, advice: 'Cut signs with other grooves on a sheet of their own.' };
}

function roomCheck({ moves }: Nest, copies: number): Check {
  const left = moves.flatMap((move, i) => (move ? [] : [Math.floor(i / copies) + 1]));
  return atMost({
    check: 'signs-without-room', subject: 'Signs that found no room on the sheet', value: left.length, limit: 0, unit: 'count',
    advice: `Cut ${left.length === 1 ? 'it' : 'them'} from another sheet (${[...new Set(left)].map((board) => `board ${board}`).join(', ')}).`,
  });
}

function useOf({ height, bound, moves }: Nest, area: number, { width, height: whole }: { readonly width: number; readonly height: number }): Quantities {
  return {
    nestedSigns: { value: moves.filter((move) => move !== undefined).length, unit: 'count' },
    nestHeight: { value: height, unit: 'mm' }, nestHeightBound: { value: bound, unit: 'mm' },
    nestUse: { value: bound / height, unit: 'ratio' }, nestOfSheet: { value: area / (width * whole), unit: 'ratio' },
  };
}
