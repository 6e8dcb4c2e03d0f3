import type { Path, Point3, Segment } from '../../geometry/index.ts';
import { type Move, type Pass, type Program, type SetUp, PROGRAM_START, drawnMoves, placedMoves } from '../../machining/index.ts';
import { amount } from '../check.ts';
import type { ShapedItem, ShapedLayer } from './shapes.ts';

/** Moves of one kind in a row, seen from above. */
interface Chain {
  readonly rapid: boolean;
  readonly path: Path;
  /** Lowest place of the cutter's tip, mm. */
  readonly lowest: number;
}

/** Every pass as one item, and the straight ways from the end of each to the start of the next. */
export function shapePasses(passes: readonly Pass[]): ShapedLayer[] {
  const cuts = passes.map((pass, i): ShapedItem => {
    const chains = chainsOf(pass.start, pass.moves).filter(({ rapid }) => !rapid);
    const lowest = Math.min(0, ...chains.map((chain) => chain.lowest));
    const paths = chains.length > 0 ? chains.map(({ path }) => path) : [pointPath(pass.start)];
    return { shape: { paths }, directed: true, ...setUpsOf(pass.setUp), title: () => `pass ${i + 1}, ${pass.name}, ${amount(-lowest, 'mm')} deep` };
  });
  return [
    { kind: 'passes', name: 'passes', items: cuts },
    { kind: 'rapids', name: 'rapids', items: rapidsBetween(passes) },
  ];
}

/** The straight ways within each set-up: between two of them the sheet is moved. */
function rapidsBetween(passes: readonly Pass[]): ShapedItem[] {
  const setUps = [...new Set(passes.map(({ setUp }) => setUp))];
  return setUps.flatMap((setUp) => {
    const own = passes.filter((pass) => pass.setUp === setUp);
    const ways = own.slice(1).map((pass, i) => wayBetween(own[i]!, pass));
    return ways.length > 0 ? [{ shape: { paths: ways }, ...setUpsOf(setUp), title: () => 'rapids between the passes' }] : [];
  });
}

const setUpsOf = (setUp: number | undefined): Pick<ShapedItem, 'setUps'> => (setUp === undefined ? {} : { setUps: [setUp] });

/** Every program of every set-up, in sheet coordinates. */
export function shapeSetUps(setups: readonly SetUp[]): ShapedLayer[] {
  return setups.flatMap((setup, i) => {
    const place = setUpsOf(setups.length > 1 || setup.place !== undefined ? setup.place ?? i : undefined);
    const programs = setup.programs.map((program) => shapeProgram(program, setup));
    return [
      { kind: 'passes' as const, name: 'passes', items: programs.flatMap(({ cuts }) => cuts.map((item) => ({ ...item, ...place }))) },
      { kind: 'rapids' as const, name: 'rapids', items: programs.flatMap(({ rapids }) => rapids.map((item) => ({ ...item, ...place }))) },
    ];
  });
}

function shapeProgram({ moves, file }: Program, setup: SetUp): { readonly cuts: ShapedItem[]; readonly rapids: ShapedItem[] } {
  const [dx, dy] = setup.shift;
  const start = { x: PROGRAM_START.x + dx, y: PROGRAM_START.y + dy, z: PROGRAM_START.z };
  const chains = chainsOf(start, drawnMoves(setup, moves));
  const ways = chains.filter(({ rapid, path }) => rapid && path.segments.length > 0).map(({ path }) => path);
  const cuts = chains.filter(({ rapid }) => !rapid).map(({ path, lowest }, i): ShapedItem => ({
    shape: { paths: [path] }, directed: true, title: () => `${file}, cut ${i + 1}, ${amount(-Math.min(0, lowest), 'mm')} deep`,
  }));
  return { cuts, rapids: ways.length > 0 ? [{ shape: { paths: ways }, title: () => `${file}, rapids` }] : [] };
}

function chainsOf(start: Point3, moves: readonly Move[]): Chain[] {
  const chains: { rapid: boolean; lowest: number; start: Point3; segments: Segment[] }[] = [];
  for (const { from, move } of placedMoves(start, moves)) {
    const rapid = move.kind === 'rapid';
    const open = chains.at(-1);
    const chain = open?.rapid === rapid ? open : { rapid, lowest: from.z, start: from, segments: [] };
    if (chain !== open) chains.push(chain);
    chain.lowest = Math.min(chain.lowest, move.to.z);
    const segment = segmentOf(from, move);
    if (segment !== undefined) chain.segments.push(segment);
  }
  return chains.map(({ rapid, lowest, start: { x, y }, segments }) => ({ rapid, lowest, path: { start: { x, y }, segments, closed: false } }));
}

/** Undefined for a move straight up or down, which is nothing seen from above. */
function segmentOf(from: Point3, move: Move): Segment | undefined {
  const end = { x: move.to.x, y: move.to.y };
  if (move.kind === 'arc') return { kind: 'arc', end, centre: move.centre, clockwise: move.clockwise };
  return end.x === from.x && end.y === from.y ? undefined : { kind: 'line', end };
}

function wayBetween(before: Pass, after: Pass): Path {
  const { x, y } = before.moves.at(-1)?.to ?? before.start;
  return { start: { x, y }, segments: [{ kind: 'line', end: { x: after.start.x, y: after.start.y } }], closed: false };
}

function pointPath({ x, y }: Point3): Path {
  return { start: { x, y }, segments: [], closed: false };
}
