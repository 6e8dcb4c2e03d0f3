import { shapeOf } from '../shapes.ts';
import type { Point } from '../view.ts';
import { type Track, placeAlong, trackOf, wayTo } from './along.ts';
import type { Way } from './ways.ts';

/** A stretch of a stroke between two ways along it, mm; on a closed one it may go on beyond the end, from the beginning. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Cuts nearer together than this, or to an end, are one, mm. */
const SAME = 1e-6;

/** The pieces of a stroke between the junctions and ends along it, in their order. */
export function piecesOf(way: Way, stroke: number): readonly Stretch[] {
  const item = way.strokes[stroke];
  if (!item) return [];
  const shape = shapeOf(item);
  const track = trackOf(shape);
  const closed = shape.chains[0]?.closed === true;
  const cuts = cutsOf(way, stroke, track, closed);
  if (cuts.length === 0) return [{ from: 0, to: track.length }];
  if (closed) return cuts.map((from, i) => ({ from, to: cuts[i + 1] ?? cuts[0]! + track.length }));
  const bounds = [0, ...cuts.filter((cut) => cut > SAME && cut < track.length - SAME), track.length];
  return bounds.slice(1).map((to, i) => ({ from: bounds[i]!, to }));
}

/** Where junctions part a stroke: between two arms that are one stroke, halfway along it. An arm in no pair ends there anyhow. */
function cutsOf({ map }: Way, stroke: number, track: Track, closed: boolean): number[] {
  return map.junctions.flatMap(({ arms, pairs }) => pairs.flatMap(([a, b]) => {
    const both = [arms[a], arms[b]].filter((arm) => arm?.stroke === stroke).map((arm) => wayTo(track, arm!.at)).sort((p, q) => p - q);
    const [from, to] = both;
    if (from === undefined || to === undefined) return [];
    const around = closed && to - from > track.length / 2;
    return [around ? ((from + to + track.length) / 2) % track.length : (from + to) / 2];
  })).sort((p, q) => p - q);
}

/** The piece around a place of a stroke, as points. */
export function piecePoints(way: Way, stroke: number, at: Point): readonly (readonly Point[])[] {
  const item = way.strokes[stroke];
  if (!item) return [];
  const track = trackOf(shapeOf(item));
  const along = wayTo(track, at);
  const pieces = piecesOf(way, stroke);
  const piece = pieces.find(({ from, to }) => along >= from && along <= to) ?? pieces.at(-1);
  if (!piece) return [];
  const beyond = piece.to > track.length ? [stretchPoints(track, { from: 0, to: piece.to - track.length })] : [];
  return [stretchPoints(track, { from: piece.from, to: Math.min(piece.to, track.length) }), ...beyond];
}

function stretchPoints(track: Track, { from, to }: Stretch): readonly Point[] {
  const between = track.points.filter((_, i) => track.ways[i]! > from && track.ways[i]! < to);
  return [placeAlong(track, from), ...between, placeAlong(track, to)].filter((point) => point !== undefined);
}
