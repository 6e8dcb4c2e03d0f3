import type { WidthAt } from '../../artwork/artwork.ts';
import {
  type Loop, loopArea, normalize, type Path, pathLength, type PathSample, type Point, type Region, regionFromLoops, samplePath, simplifyPolyline, subtract, type Vector,
} from '../../geometry/index.ts';
import { movedWidths, widthAt } from '../edit/carry.ts';
import { breaksOf } from '../edit/corners.ts';

/** Sharper breaks of a path, degrees, get a whole disc of the pen. */
const CORNER = 10;

/** Sections turn by no more than this, radians, and have no more steps, so that each is a simple polygon. */
const [SECTION_TURN, SECTION_STEPS] = [0.9, 60];

/**
 * What a round pen leaves that runs along a path and has the widths stated along it: the discs at all places and the bands between them, to
 * within `tolerance` mm. The disc of radius r at c touches the band's sides at c - r r' t +- r sqrt(1 - r'^2) n.
 */
export function drawnRegion(path: Path, widths: readonly WidthAt[], tolerance: number): Region {
  if (widths.length === 0) return { loops: [] };
  const loops = smoothPieces(path).flatMap(({ piece, from }) => pieceLoops(piece, movedWidths(widths, 1, -from), tolerance));
  return regionFromLoops(loops.map(leftTurning), 'positive');
}

const leftTurning = (loop: Loop): Loop => (loopArea(loop) < 0 ? [...loop].reverse() : loop);

/** The path between its corners, each piece open, with the length along the path where it begins. */
function smoothPieces(path: Path): { piece: Path; from: number }[] {
  const inner = breaksOf(path, CORNER).filter(({ segment }) => segment > 0);
  const cuts = [{ segment: 0, along: 0 }, ...inner, { segment: path.segments.length, along: 0 }];
  return cuts.slice(1).map((to, i) => {
    const from = cuts[i]!;
    const start = from.segment === 0 ? path.start : path.segments[from.segment - 1]!.end;
    return { piece: { start, segments: path.segments.slice(from.segment, to.segment), closed: false }, from: from.along };
  });
}

/** A place of the pen. */
interface Place {
  readonly at: Point;
  readonly tangent: Vector;
  readonly radius: number;
  readonly left: Point;
  readonly right: Point;
}

function pieceLoops(piece: Path, widths: readonly WidthAt[], tolerance: number): Loop[] {
  const places = placesAlong(piece, widths, tolerance);
  const loops = [disc(places[0]!, tolerance), disc(places.at(-1)!, tolerance)];
  for (let i = 0; i < places.length - 1; ) {
    const to = sectionEnd(places, i);
    if (to > i) loops.push(section(places.slice(i, to + 1), tolerance));
    else loops.push(disc(places[i]!, tolerance), disc(places[i + 1]!, tolerance), straightBand(places[i]!, places[i + 1]!));
    i = Math.max(to, i + 1);
  }
  return loops;
}

function placesAlong(piece: Path, widths: readonly WidthAt[], tolerance: number): Place[] {
  const length = pathLength(piece);
  if (length === 0) return [placeAt({ point: piece.start, tangent: { x: 1, y: 0 }, distance: 0 }, widths, 1)];
  const usual = Math.max(widthAt(widths, length / 2)!, tolerance);
  // On a bend as tight as the pen's radius the outer side's chords of twice the step stray by step^2 / usual.
  const step = Math.min(usual / 8, Math.sqrt(tolerance * usual));
  const samples = samplePath(piece, step);
  // Across a vertex of a polyline the direction between its neighbours turns evenly, which keeps the inner side from folding over.
  return samples.map((sample, i) => {
    const [before, after] = [samples[i - 1], samples[i + 1]];
    const tangent = before && after ? normalize(subtract(after.point, before.point)) : sample.tangent;
    return placeAt({ ...sample, tangent }, widths, step);
  });
}

function placeAt({ point: at, tangent, distance: along }: Pick<PathSample, 'point' | 'tangent' | 'distance'>, widths: readonly WidthAt[], step: number): Place {
  const radius = Math.max(widthAt(widths, along)! / 2, 1e-6);
  const slope = Math.max(-0.95, Math.min(0.95, (widthAt(widths, along + step / 2)! - widthAt(widths, along - step / 2)!) / (2 * step)));
  const [back, out] = [-radius * slope, radius * Math.sqrt(1 - slope * slope)];
  const touch = (side: number): Point => ({ x: at.x + back * tangent.x - side * out * tangent.y, y: at.y + back * tangent.y + side * out * tangent.x });
  return { at, tangent, radius, left: touch(1), right: touch(-1) };
}

/** The last place of the section that begins at one: as far as both sides run on forwards. */
function sectionEnd(places: readonly Place[], from: number): number {
  let to = from;
  let turn = 0;
  while (to < places.length - 1 && to - from < SECTION_STEPS && runsOn(places[to]!, places[to + 1]!)) {
    const [u, v] = [places[to]!.tangent, places[to + 1]!.tangent];
    turn += Math.abs(Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y));
    if (turn > SECTION_TURN && to > from) break;
    to++;
  }
  return to;
}

function runsOn(a: Place, b: Place): boolean {
  const forwards = (p: Point, q: Point) => (q.x - p.x) * (a.tangent.x + b.tangent.x) + (q.y - p.y) * (a.tangent.y + b.tangent.y) > 0;
  return forwards(a.left, b.left) && forwards(a.right, b.right);
}

const section = (places: readonly Place[], tolerance: number): Loop =>
  [...simplifyPolyline(places.map(({ right }) => right), tolerance / 4), ...simplifyPolyline(places.map(({ left }) => left), tolerance / 4).reverse()];

function straightBand(a: Place, b: Place): Loop {
  const [dx, dy] = [b.at.x - a.at.x, b.at.y - a.at.y];
  const size = Math.hypot(dx, dy) || 1;
  const side = ({ at, radius }: Place, sign: number): Point => ({ x: at.x - (sign * radius * dy) / size, y: at.y + (sign * radius * dx) / size });
  return [side(a, -1), side(b, -1), side(b, 1), side(a, 1)];
}

/** A polygon as much outside the disc as inside, so that its area is right. */
function disc({ at, radius }: Place, tolerance: number): Loop {
  const count = Math.min(2000, Math.max(12, Math.ceil(Math.PI / Math.acos(1 - Math.min(0.5, tolerance / radius)))));
  const angle = (2 * Math.PI) / count;
  const reach = radius * Math.sqrt(angle / Math.sin(angle));
  return Array.from({ length: count }, (_, i) => ({ x: at.x + reach * Math.cos(i * angle), y: at.y + reach * Math.sin(i * angle) }));
}
