import { type Path, type Point, pathEnd, pathLength, pathPiece, reversePath } from '../../geometry/index.ts';
import type { LitPiece } from '../types.ts';
import { type Course, placeAt } from './course.ts';
import { type Fitting, fitModules } from './modules.ts';
import type { Span } from './spans.ts';

/** How tubes end and strips are cut. Lengths mm. */
export interface PieceOptions {
  readonly moduleLength: number;
  /** Least length of tube without strip at each of its ends. */
  readonly leastEnd: number;
  readonly holeDiameter: number;
  /** Whether cable holes lie beyond the tube's ends, rather than under them. */
  readonly holesClear: boolean;
}

/** A lit piece, and the cable holes at its start and end. */
export interface Piece extends LitPiece {
  readonly holes: readonly [Point, Point];
}

/** The tube and strip of a span; undefined where not one module fits. */
export function pieceOf(course: Course, span: Span, options: PieceOptions): Piece | undefined {
  const [before, after] = [endRoom(span.freeStart, options), endRoom(span.freeEnd, options)];
  const length = span.to - span.from - before.tube - after.tube;
  const { modules, cutLength, unlit } = fitModules(length, options.leastEnd, options.moduleLength);
  if (modules === 0) return undefined;
  const path = partOf(course.path, course.length, span.from + before.tube, span.to - after.tube);
  const holes = [placeAt(course, span.from + before.hole).at, placeAt(course, span.to - after.hole).at] as const;
  return { stroke: span.stroke, path, lit: litPart(path, { modules, cutLength, unlit }), modules, cutLength, unlitStart: unlit, unlitEnd: unlit, holes };
}

/** How far the hole's middle and the tube's end lie from an end of the groove: from where it stops, or from where another tube lets it begin. */
function endRoom(free: boolean, { holeDiameter, holesClear }: PieceOptions): { readonly hole: number; readonly tube: number } {
  const hole = free ? 0 : holeDiameter / 2;
  return { hole, tube: holesClear ? hole + holeDiameter / 2 : 0 };
}

function litPart(path: Path, { cutLength, unlit }: Fitting): Path {
  return pathPiece(path, unlit, Math.min(unlit + cutLength, pathLength(path)));
}

/** The part between two lengths; on a closed path the second may lie beyond its end. */
function partOf(path: Path, length: number, from: number, to: number): Path {
  if (to <= length) return pathPiece(path, from, to);
  const [first, second] = [pathPiece(path, from, length), pathPiece(path, 0, to - length)];
  return { start: first.start, segments: [...first.segments, ...second.segments], closed: false };
}

/** The same piece with the current going through it the other way. */
export function reversePiece(piece: Piece): Piece {
  const { path, lit, unlitStart, unlitEnd, holes: [start, end] } = piece;
  return { ...piece, path: reversePath(path), lit: reversePath(lit), unlitStart: unlitEnd, unlitEnd: unlitStart, holes: [end, start] };
}

/** The middle of its strip. */
export const middleOf = ({ lit, cutLength }: LitPiece): Point => pathEnd(pathPiece(lit, 0, cutLength / 2));
