import { type Box, components, growBox, intersectRegions, pointInRegion, type Region, regionBounds } from '../../geometry/index.ts';
import type { Tiling } from '../job/tiling.ts';
import { type StrokeTrack } from './stroke-cut.ts';
import { boxRegion, type Share, sharesOf } from './tiles.ts';
import { pointAt } from './track.ts';
import { isWithinBox, trackWithin } from './track-within.ts';

/** A connected part of the groove as one set-up cuts it. */
export interface GrooveShare {
  readonly part: Region;
  /** The centre lines within it. */
  readonly strokes: readonly StrokeTrack[];
  readonly setUp?: number;
  /** The part it was cut off from at a window. */
  readonly cutFrom?: Region;
  /** Whether it is the one to tell what is wrong with the part. */
  readonly tells: boolean;
}

/**
 * A connected part of the groove shared out among the set-ups. Where no window holds it whole it is cut off at each
 * window it reaches. A disc of the cutter that fits the groove lies within one window or the next as long as they
 * overlap by its diameter, so that together they clear what one would clear.
 */
export function shareOut(part: Region, tiling: Tiling | undefined, strokes: readonly StrokeTrack[], diameter: number): GrooveShare[] {
  const own = strokesWithin(strokes, part);
  const box = regionBounds(part);
  if (!tiling || !box) return [{ part, strokes: own, tells: true }];
  const shares = sharesOf(tiling.tiles, box);
  const pieces = shares.flatMap((share) => piecesOf(part, own, share, diameter / 2));
  return pieces.map((piece, i) => ({ ...piece, tells: i === 0 }));
}

function piecesOf(part: Region, strokes: readonly StrokeTrack[], { setUp, window }: Share, radius: number): Omit<GrooveShare, 'tells'>[] {
  if (!window) return [{ part, strokes, setUp }];
  const cut = strokes.flatMap((stroke) => strokeWithin(stroke, growBox(window, -radius)));
  return components(intersectRegions(part, boxRegion(window)))
    .map((piece) => ({ part: piece, strokes: strokesWithin(cut, piece), setUp, cutFrom: part }));
}

function strokeWithin(stroke: StrokeTrack, box: Box): StrokeTrack[] {
  if (stroke.track.pieces.length === 0) return isWithinBox(box, stroke.start) ? [stroke] : [];
  return trackWithin(stroke.track, box).map((track) => ({ start: pointAt(track, 0), track }));
}

const strokesWithin = (strokes: readonly StrokeTrack[], part: Region): StrokeTrack[] => strokes.filter(({ start }) => pointInRegion(part, start) !== 'outside');
