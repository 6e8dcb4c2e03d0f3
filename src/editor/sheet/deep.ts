import { type Chain, type Piece, halves, pieceBox } from './path.ts';
import { type Box, type Frame, type Point, overlaps, toScreen, visibleBox } from './view.ts';

/**
 * Canvas paths and transforms are 32-bit floats: at a coordinate of 2400 mm they step by 0.0002 mm, two pixels where a
 * hundredth of a millimetre is 100 pixels wide. Near enough, paths are therefore placed here, in double precision, as
 * screen coordinates of what is in sight.
 */
const FLOAT_STEP = 2 ** -24;
/** Pixels a place may be off before that is done. */
const OFF = 0.03;

/** Whether drawing this box's contents as they are would be off by more than can be seen. */
export function needsPlacing(frame: Frame, box: Box): boolean {
  const furthest = Math.max(Math.abs(box.minX), Math.abs(box.minY), Math.abs(box.maxX), Math.abs(box.maxY));
  return furthest * frame.scale * FLOAT_STEP > OFF;
}

/** Pixels around the canvas beyond which nothing is kept; wide enough for the thickest line. */
const BEYOND = 64;
/** Chords stray at most this many pixels from a curve. */
const FLATNESS = 0.05;

/** A chain as screen coordinates in pixels, all within `BEYOND` of the canvas; what is out of sight is cut short without changing what is filled in sight. */
export function placed({ pieces, closed }: Chain, frame: Frame): Point[] {
  const sight = visibleBox(frame, BEYOND);
  const first = pieces[0];
  if (!first) return [];
  const points: Point[] = [toScreen(frame, first.from)];
  for (const piece of pieces) flatten(piece, frame, sight, points, 0);
  return cut(points, frame, closed);
}

/** Out of sight one chord stands for a curve: both lie in the same box, which does not touch what is seen. */
function flatten(piece: Piece, frame: Frame, sight: Box, points: Point[], depth: number): void {
  if (!piece.controls || depth > 24 || !overlaps(pieceBox(piece), sight) || isFlat(piece, frame.scale)) {
    points.push(toScreen(frame, piece.to));
    return;
  }
  const [first, second] = halves(piece);
  flatten(first, frame, sight, points, depth + 1);
  flatten(second, frame, sight, points, depth + 1);
}

/** A cubic strays from its chord by at most 3/4 of the greatest second difference of its points (Wang, 1984). */
function isFlat({ from, to, controls }: Piece, scale: number): boolean {
  if (!controls) return true;
  const [a, b] = controls;
  const bend = Math.max(Math.hypot(from.x - 2 * a.x + b.x, from.y - 2 * a.y + b.y), Math.hypot(a.x - 2 * b.x + to.x, a.y - 2 * b.y + to.y));
  return bend * 0.75 * scale <= FLATNESS;
}

/** Cuts a chain of points at the four edges of what is kept, one after the other (Sutherland and Hodgman, 1974). */
function cut(points: readonly Point[], { width, height }: Frame, closed: boolean): Point[] {
  const edges: readonly ((point: Point) => number)[] = [
    ({ x }) => x + BEYOND, ({ x }) => width + BEYOND - x, ({ y }) => y + BEYOND, ({ y }) => height + BEYOND - y,
  ];
  return edges.reduce<Point[]>((kept, inside) => cutAt(kept, inside, closed), [...points]);
}

function cutAt(points: readonly Point[], inside: (point: Point) => number, closed: boolean): Point[] {
  const kept: Point[] = [];
  points.forEach((point, index) => {
    const before = points[index - 1] ?? (closed ? points.at(-1) : undefined);
    const here = inside(point);
    const there = before === undefined ? here : inside(before);
    if (before !== undefined && (here < 0) !== (there < 0)) kept.push(crossing(before, point, there / (there - here)));
    if (here >= 0) kept.push(point);
  });
  return kept;
}

const crossing = (a: Point, b: Point, t: number): Point => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
