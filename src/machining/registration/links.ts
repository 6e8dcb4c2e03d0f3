import { type Box, growBox, type Point, unionBoxes } from '../../geometry/index.ts';
import type { Tile, Tiling } from '../job/tiling.ts';
import { choosePins, type PinPair } from './pin-pair.ts';
import { type Lies, makePlaces } from './places.ts';
import type { RegistrationRequest } from './request.ts';

/** A set-up and the one before it, its neighbour, that drills its holes. */
export interface Link {
  readonly setUp: number;
  readonly drilledIn: number;
  readonly pins: PinPair;
}

/** What every cutter's edge reaches in every set-up, in program coordinates. */
export function commonReach({ tiles }: Tiling): Box {
  return unionBoxes(tiles.map(({ window, shift }) => moved(window, -shift[0], -shift[1])))!;
}

const moved = ({ minX, minY, maxX, maxY }: Box, dx: number, dy: number): Box => ({ minX: minX + dx, minY: minY + dy, maxX: maxX + dx, maxY: maxY + dy });

/** The neighbours of a set-up that run before it, the earliest first: the fewer moves lie between, the less adds up. */
export function neighboursBefore(tiles: readonly Tile[], setUp: number): number[] {
  const { column, row } = tiles[setUp]!;
  return tiles.slice(0, setUp).flatMap((tile, i) => (Math.abs(tile.column - column) + Math.abs(tile.row - row) === 1 ? [i] : []));
}

/**
 * Finds pins for every set-up after the first. Those that follow a move of one direction share two pins where they can.
 * Undefined links tell the set-ups for which no two places were found.
 */
export function linkSetUps(request: RegistrationRequest): (Link | { readonly setUp: number })[] {
  const { tiling: { tiles } } = request;
  const places = makePlaces(request);
  const rest = tiles.map((_, setUp) => setUp).slice(1);
  const predecessor = new Map(rest.map((setUp) => [setUp, neighboursBefore(tiles, setUp)[0] ?? setUp - 1]));
  const groups = [rest.filter((setUp) => tiles[setUp]!.row === tiles[predecessor.get(setUp)!]!.row), rest.filter((setUp) => tiles[setUp]!.row !== tiles[predecessor.get(setUp)!]!.row)];
  return groups.flatMap((group) => {
    const moves = group.map((setUp) => ({ setUp, drilledIn: predecessor.get(setUp)! }));
    const shared = pinsFor(request, moves, places);
    return moves.map((move) => {
      const pins = shared ?? pinsFor(request, [move], places);
      return pins ? { ...move, pins } : { setUp: move.setUp };
    });
  }).sort((a, b) => a.setUp - b.setUp);
}

interface SheetMove {
  readonly setUp: number;
  readonly drilledIn: number;
}

/** Pins that serve all of these moves: within reach while they are drilled, and again while they are used. */
function pinsFor(request: RegistrationRequest, moves: readonly SheetMove[], places: (place: Point) => Lies | undefined): PinPair | undefined {
  const { tiling, pinDiameter, clearance, pins } = request;
  if (moves.length === 0) return undefined;
  const shifts = moves.map(({ setUp }) => tiling.tiles[setUp]!.shift);
  if (pins.length >= 2) return [pins[0]!, pins[1]!];
  const reach = growBox(commonReach(tiling), -(pinDiameter + clearance) / 2);
  const boxes = moves.map(({ setUp, drilledIn }) => {
    const [before, now] = [tiling.tiles[drilledIn]!.shift, tiling.tiles[setUp]!.shift];
    return moved(reach, before[0] - now[0], before[1] - now[1]);
  });
  const box = [reach, ...boxes].reduce((a, b) => ({ minX: Math.max(a.minX, b.minX), minY: Math.max(a.minY, b.minY), maxX: Math.min(a.maxX, b.maxX), maxY: Math.min(a.maxY, b.maxY) }));
  return choosePins(box, (place) => worst(shifts.map(([dx, dy]) => places({ x: place.x + dx, y: place.y + dy }))));
}

const RANK: readonly Lies[] = ['waste', 'groove', 'board'];

const worst = (found: readonly (Lies | undefined)[]): Lies | undefined =>
  found.some((one) => one === undefined) ? undefined : RANK[Math.max(...found.map((one) => RANK.indexOf(one!)))];

