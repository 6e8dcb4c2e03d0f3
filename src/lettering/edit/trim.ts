import type { Doubt, Stroke } from '../../artwork/artwork.ts';
import {
  add, distance, endTangents, flattenPath, leftNormal, makeSegmentIndex, type Path, pathEnd, pathLength, pathPiece, type Point, reversePath, samplePath, scale, type Segment,
} from '../../geometry/index.ts';
import { keptOf, movedWidths, widthAt, widthsBetween } from './carry.ts';
import { tipsOf } from './landings.ts';

/** Lengths mm. */
export interface TrimOptions {
  /** Added to each end that counts; taken off where it is below 0. */
  readonly length: number;
  /** Whether only ends that lie on no stroke count, or all. */
  readonly ends: 'free' | 'all';
  /** How an end goes on: straight, or with the bend it has. */
  readonly course: 'straight' | 'bend';
  /** What becomes of strokes no longer than what would be taken off. */
  readonly vanishing: 'keep' | 'drop';
  /** An end this near to a stroke lies on it. */
  readonly reach: number;
}

export interface Trimmed {
  readonly strokes: readonly Stroke[];
  /** Ends that were changed. */
  readonly ends: number;
  /** Strokes (by their numbers) of which nothing would be left, and where they are. */
  readonly vanished: readonly { readonly stroke: number; readonly at: Point }[];
}

/** Makes every open stroke shorter or longer at its ends. Closed strokes and single places stay, these have no ends to go on from. */
export function trimEnds(strokes: readonly Stroke[], options: TrimOptions): Trimmed {
  const counting = strokes.map((): [boolean, boolean] => [false, false]);
  for (const { stroke, end, on } of tipsOf(strokes, options.reach)) counting[stroke]![end] = options.ends === 'all' || on.length === 0;
  const done = strokes.map((stroke, i) => changed(stroke, counting[i]!, options));
  const vanished = done.flatMap((result, stroke) => (result === undefined ? [{ stroke, at: strokes[stroke]!.path.start }] : []));
  return {
    strokes: done.flatMap((result, i) => (result ? [result] : options.vanishing === 'keep' ? [strokes[i]!] : [])),
    ends: options.length === 0 ? 0 : counting.reduce((sum, [a, b], i) => sum + (done[i] ? Number(a) + Number(b) : 0), 0),
    vanished,
  };
}

/** Undefined when nothing would be left. */
function changed(stroke: Stroke, [first, last]: readonly [boolean, boolean], { length, course }: TrimOptions): Stroke | undefined {
  if (length === 0 || (!first && !last)) return stroke;
  return length > 0 ? lengthened(stroke, [first, last], length, course) : shortened(stroke, [first, last], -length);
}

function shortened(stroke: Stroke, [first, last]: readonly [boolean, boolean], off: number): Stroke | undefined {
  const { path, widths, doubts } = stroke;
  const total = pathLength(path);
  const [from, to] = [first ? off : 0, total - (last ? off : 0)];
  if (!(to - from > 1e-9 * total)) return undefined;
  return {
    path: pathPiece(path, from, to), ...keptOf(stroke),
    ...(widths && { widths: widthsBetween(widths, from, to) }),
    ...(doubts && { doubts: doubtsBetween(path, doubts, from, to) }),
  };
}

/** Doubts about what is left: those whose place on the path is. */
function doubtsBetween(path: Path, doubts: readonly Doubt[], from: number, to: number): Doubt[] {
  const points = flattenPath(path, 0.01);
  const along = [0];
  for (let i = 1; i < points.length; i++) along.push(along[i - 1]! + distance(points[i - 1]!, points[i]!));
  const index = makeSegmentIndex(points.slice(1).map((end, i) => ({ from: points[i]!, to: end })));
  return doubts.filter(({ at }) => {
    const near = index.nearest(at, Infinity)!;
    const here = along[near.segment]! + distance(points[near.segment]!, near.point);
    return here >= from && here <= to;
  });
}

function lengthened(stroke: Stroke, [first, last]: readonly [boolean, boolean], by: number, course: TrimOptions['course']): Stroke {
  const { path, widths } = stroke;
  const total = pathLength(path);
  const longer = last ? goneOn(path, by, course) : path;
  const whole = first ? reversePath(goneOn(reversePath(longer), by, course, path)) : longer;
  const ahead = first ? by : 0;
  const known = widths && widths.length > 0 ? [
    ...(first ? [{ along: 0, width: widthAt(widths, 0)! }] : []),
    ...movedWidths(widths, 1, ahead),
    ...(last ? [{ along: total + ahead + by, width: widthAt(widths, total)! }] : []),
  ] : widths;
  return { path: whole, ...keptOf(stroke), ...(known && { widths: known }) };
}

/** An end goes on with no more turn than this, radians: beyond it, it would curl up. */
const MOST_TURN = Math.PI / 2;

/** An end's bend is read over the length that is added, but over no more than this share of the stroke it had. */
const READ_SHARE = 1 / 2;

/** Bends that depart from straight by less than this over the length added, mm, are none. */
const FLAT = 1e-6;

/** The path longer at its end by a line or an arc in its direction there. `drawn` is the stroke as it was, run either way. */
function goneOn(path: Path, by: number, course: TrimOptions['course'], drawn: Path = path): Path {
  const at = pathEnd(path);
  const ahead = endTangents(path).last;
  const bend = course === 'bend' ? bendAtEnd(path, Math.min(by, pathLength(drawn) * READ_SHARE), by) : 0;
  if (Math.abs(bend) * by * by <= 2 * FLAT) return { ...path, segments: straightOn(path, add(at, scale(ahead, by))) };
  const radius = 1 / bend;
  const centre = add(at, scale(leftNormal(ahead), radius));
  const turn = by * bend;
  const [sin, cos] = [Math.sin(turn), Math.cos(turn)];
  const out = { x: at.x - centre.x, y: at.y - centre.y };
  const end = { x: centre.x + cos * out.x - sin * out.y, y: centre.y + sin * out.x + cos * out.y };
  return { ...path, segments: [...path.segments, { kind: 'arc', end, centre, clockwise: bend < 0 }] };
}

/** A line that ends the path is made longer rather than followed by another. */
function straightOn(path: Path, end: Point): Segment[] {
  const line: Segment = { kind: 'line', end };
  return path.segments.at(-1)?.kind === 'line' ? [...path.segments.slice(0, -1), line] : [...path.segments, line];
}

/** Mean curvature over the last `over` mm, 1/mm, left positive, no more than what turns by MOST_TURN over `by`. */
function bendAtEnd(path: Path, over: number, by: number): number {
  const total = pathLength(path);
  const samples = samplePath(pathPiece(path, total - over, total), over / 8);
  let turn = 0;
  for (let i = 1; i < samples.length; i++) {
    const [u, v] = [samples[i - 1]!.tangent, samples[i]!.tangent];
    turn += Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
  }
  return Math.max(-MOST_TURN / by, Math.min(MOST_TURN / by, turn / over));
}
