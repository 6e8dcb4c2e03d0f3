import { type Box, distance, type Point, type Region, regionBounds } from '../../geometry/index.ts';
import type { SeamStep } from '../job/registration.ts';
import type { Seam, Tile, Tiling } from '../job/tiling.ts';
import { neighboursAcross } from '../tiling/seam-line.ts';
import { farError, type PinErrors, placingError } from './errors.ts';
import type { Link } from './links.ts';

interface SteppedWork extends PinErrors {
  readonly tiling: Tiling;
  readonly board: Region;
}

/**
 * The largest step at each seam. Every link lets the sheet shift by half the clearance and the holes' error, and turn by
 * twice that over the pin distance; between two set-ups the links that lead to their common ancestor add up.
 */
export function seamSteps({ tiling: { tiles, seams }, board, ...errors }: SteppedWork, links: readonly Link[]): SeamStep[] {
  const area = regionBounds(board);
  return seams.flatMap((seam, number) => {
    const steps = neighboursAcross(tiles, seam).flatMap(([a, b]) =>
      placesOn(seam, tiles[a]!, tiles[b]!, area).map((at) => ({ seam: number, at, ...stepAt(at, between(a, b, links), tiles, errors) })));
    return steps.length > 0 ? [steps.reduce((most, step) => (step.worst > most.worst ? step : most))] : [];
  });
}

/** The largest steps between a set-up and its neighbours that are placed already, one for each. */
export function stepsWith({ tiling: { tiles, seams }, board, ...errors }: SteppedWork, links: readonly Link[], setUp: number): number[] {
  const area = regionBounds(board);
  return seams.flatMap((seam) => neighboursAcross(tiles, seam).filter(([, later]) => later === setUp)
    .map(([a, b]) => Math.max(0, ...placesOn(seam, tiles[a]!, tiles[b]!, area).map((at) => stepAt(at, between(a, b, links), tiles, errors).worst))));
}

/** Where grooves cross the seam between two set-ups; where none does the ends of what of it lies across the board, for the outline crosses it. */
function placesOn({ axis, at, crossings }: Seam, a: Tile, b: Tile, area: Box | undefined): Point[] {
  const other = axis === 'x' ? 'y' : 'x';
  const [low, high] = axis === 'x' ? [Math.max(a.core.minY, b.core.minY), Math.min(a.core.maxY, b.core.maxY)] : [Math.max(a.core.minX, b.core.minX), Math.min(a.core.maxX, b.core.maxX)];
  const [from, to] = axis === 'x' ? [area?.minY ?? low, area?.maxY ?? high] : [area?.minX ?? low, area?.maxX ?? high];
  const own = crossings.map((crossing) => crossing.at).filter((place) => place[other] >= low && place[other] <= high);
  const ends = Math.max(low, from) < Math.min(high, to) ? [Math.max(low, from), Math.min(high, to)] : [];
  return own.length > 0 ? own : ends.map((along) => (axis === 'x' ? { x: at, y: along } : { x: along, y: at }));
}

/** The links from each of two set-ups up to where their ways meet. */
function between(a: number, b: number, links: readonly Link[]): Link[] {
  const [up, down] = [chain(a, links), chain(b, links)];
  return [...up.filter((link) => !down.includes(link)), ...down.filter((link) => !up.includes(link))];
}

function chain(setUp: number, links: readonly Link[]): Link[] {
  const link = links.find((one) => one.setUp === setUp);
  return link ? [link, ...chain(link.drilledIn, links)] : [];
}

function stepAt(at: Point, path: readonly Link[], tiles: readonly Tile[], errors: PinErrors): Pick<SeamStep, 'worst' | 'likely'> {
  const error = placingError(errors);
  const parts = path.map(({ setUp, pins: [first, second] }) => {
    const [dx, dy] = tiles[setUp]!.shift;
    const far = Math.hypot(at.x - first.x - dx, at.y - first.y - dy);
    return { shift: error, turn: farError(error, distance(first, second), far) };
  });
  return {
    worst: parts.reduce((sum, { shift, turn }) => sum + shift + 2 * turn, 0),
    likely: Math.sqrt(parts.reduce((sum, { shift, turn }) => sum + shift ** 2 + 2 * turn ** 2, 0)),
  };
}
