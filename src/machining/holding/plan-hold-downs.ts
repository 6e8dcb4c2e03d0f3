import { boxHolds, distance, growBox, makeRegionIndex, type Point, type Region, shiftBox } from '../../geometry/index.ts';
import type { Hole } from '../job/hole.ts';
import type { HoldDown } from '../job/holding.ts';
import type { Stock } from '../job/stock.ts';
import type { Tiling } from '../job/tiling.ts';
import { signedDistance } from '../measure/signed-distance.ts';
import type { Bed } from '../statics/overhang.ts';

/** Where the sheet is to be held down. Lengths mm. */
export interface HoldDownRequest {
  readonly stock: Pick<Stock, 'width' | 'height'>;
  readonly tiling: Tiling;
  /** The bed in program coordinates. */
  readonly bed: Bed;
  readonly board: Region;
  /** Holes to keep clear of, those for pins among them. */
  readonly holes: readonly Hole[];
  readonly kind: HoldDown['kind'];
  readonly keepOut: number;
  readonly height: number;
  /** Greatest distance wished for between neighbours. */
  readonly pitch: number;
  /** Room the cutter takes beside the board: its diameter, lead-ins and allowances. */
  readonly cutRoom: number;
}

/** Screws stand this far inside the sheet's edge, mm (common practice, no source). */
const EDGE = 10;
/** Places are looked for on a grid of this, mm; of a larger one on large sheets. */
const STEP = 10;
const MOST_PLACES = 20_000;
/** A set-up has so many if there is room: two do not keep a sheet from turning (common practice, no source). */
const LEAST = 4;

/**
 * Hold-downs in the waste of every set-up's part of the sheet: spread so that no place of the waste is farther than the
 * pitch from one, clear of the cutter's way round the board and of holes. None where there is no waste on the bed.
 */
export function planHoldDowns(request: HoldDownRequest): HoldDown[] {
  const { kind, keepOut, height, tiling, bed } = request;
  const free = freePlaces(request);
  return tiling.tiles.flatMap(({ shift: [dx, dy] }, setUp) => {
    const on = growBox(shiftBox(bed, dx, dy), -EDGE);
    return spread(free.filter((place) => boxHolds(on, place)), request.pitch).map((at): HoldDown => ({ kind, at, keepOut, height, setUps: [setUp] }));
  });
}

function freePlaces({ stock, board, holes, keepOut, kind, cutRoom }: HoldDownRequest): Point[] {
  const step = Math.max(STEP, Math.sqrt((stock.width * stock.height) / MOST_PLACES));
  // A clamp grips the edge; a screw needs material round it.
  const edge = kind === 'clamp' ? 0 : EDGE;
  const outline = board.loops.length > 0 ? makeRegionIndex(board) : undefined;
  const clear = (place: Point) => (outline === undefined || -signedDistance(outline, place) >= keepOut / 2 + cutRoom)
    && holes.every(({ centre, diameter, slot }) => distance(centre, place) >= (keepOut + diameter + (slot?.length ?? 0)) / 2);
  return steps(edge, stock.height - edge, step).flatMap((y) => steps(edge, stock.width - edge, step).map((x) => ({ x, y })))
    .filter((place) => (kind !== 'clamp' || onEdge(stock, place)) && clear(place));
}

const onEdge = ({ width, height }: Pick<Stock, 'width' | 'height'>, { x, y }: Point): boolean => x === 0 || y === 0 || x === width || y === height;

function steps(low: number, high: number, step: number): number[] {
  if (high < low) return [];
  const count = Math.max(1, Math.ceil((high - low) / step));
  return Array.from({ length: count + 1 }, (_, i) => low + ((high - low) * i) / count);
}

/** Takes the place farthest from those taken, again and again, until every place is near enough to one. */
function spread(places: readonly Point[], pitch: number): Point[] {
  const [first] = places;
  if (!first) return [];
  const taken = [first];
  const nearest = places.map((place) => distance(place, first));
  for (;;) {
    const far = nearest.reduce((best, away, i) => (away > nearest[best]! ? i : best), 0);
    if (nearest[far]! < pitch && (taken.length >= LEAST || nearest[far]! < pitch / 2)) return taken;
    taken.push(places[far]!);
    places.forEach((place, i) => { nearest[i] = Math.min(nearest[i]!, distance(place, places[far]!)); });
  }
}
