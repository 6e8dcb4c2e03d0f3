import { type Point } from '../../geometry/index.ts';
import { type EntryStyle, rampBackAndForth } from './entry.ts';
import { equalLayers } from './layers.ts';
import { AIR_GAP, type Recorder } from './recorder.ts';
import { ahead, endOf, startOf } from './tab-cut.ts';
import { pointAt, type Track, trackPart } from './track.ts';
import { nearestOnTrack } from './track-query.ts';
import { type Stretch } from './track-within.ts';

/** A stretch of a piece that is cut to the bottom, and the way over the tab after it; none after the last. */
export interface OpenSpan {
  readonly cut: Track;
  readonly overTab?: Track;
}

/** Cut there is at least on both sides of a tab that stands on a piece, mm. */
const ROOM = 1;

/** The stretches of a piece of a closed track between the tabs (distances along that track) that stand on it. */
export function openSpans(track: Track, { from, to }: Stretch, places: readonly number[], zone: number): OpenSpan[] {
  const own = places.flatMap((place) => [place, place + track.length]).filter((place) => place - zone / 2 > from + ROOM && place + zone / 2 < to - ROOM).sort((a, b) => a - b);
  return [...own, to + zone / 2].map((place, i) => ({
    cut: trackPart(track, i === 0 ? from : own[i - 1]! + zone / 2, place - zone / 2),
    ...(i < own.length && { overTab: trackPart(track, place - zone / 2, place + zone / 2) }),
  }));
}

export interface OpenOutline {
  readonly spans: readonly OpenSpan[];
  /** The closed track of the finished edge, where it is not the one that was roughed. */
  readonly wall?: Track;
  /** Height of the tabs' tops; the bottom when there are none. */
  readonly tabTop: number;
  readonly bottom: number;
  readonly style: EntryStyle;
}

/**
 * Cuts a piece of an outline that goes on in another set-up. Every layer runs in the same direction, so that the cut
 * stays a climbing one, and is entered by a ramp forth and back at the piece's start, on the lap.
 */
export function cutOpenOutline(recorder: Recorder, piece: OpenOutline): void {
  const { spans, tabTop, bottom, style, wall } = piece;
  let floor = 0;
  for (const z of equalLayers(0, tabTop, style.cutter.depthOfCut)) {
    cutLayer(recorder, spans, { floor, z, over: z }, style);
    floor = z;
  }
  for (const z of equalLayers(tabTop, bottom, style.cutter.depthOfCut)) {
    cutLayer(recorder, spans, { floor, z, over: tabTop + AIR_GAP }, style);
    floor = z;
  }
  if (wall) finishPiece(recorder, piece, wall);
}

/** Height of the layer before, of this one, and of the way over tabs. */
interface Layer {
  readonly floor: number;
  readonly z: number;
  readonly over: number;
}

function cutLayer(recorder: Recorder, spans: readonly OpenSpan[], { floor, z, over }: Layer, style: EntryStyle): void {
  const { cut: cutFeed, plunge } = style.feeds;
  recorder.comeDown(startOf(spans[0]!.cut), floor);
  spans.forEach(({ cut, overTab }, i) => {
    if (i === 0 || over !== z) {
      recorder.lineTo({ ...startOf(cut), z: floor }, plunge);
      rampBackAndForth(recorder, cut, z, style);
    }
    recorder.along(cut, z, cutFeed);
    if (!overTab) return;
    recorder.lineTo({ ...endOf(cut), z: over }, cutFeed);
    recorder.along(overTab, over, cutFeed);
  });
}

/** Along the finished edge once at full depth, above the tabs at their tops' height; down, up and off in the roughed cut. */
function finishPiece(recorder: Recorder, { spans, tabTop, bottom, style }: OpenOutline, wall: Track): void {
  const { finish, plunge } = style.feeds;
  const onWall = (place: Point) => nearestOnTrack(wall, place)!.at;
  recorder.comeDown(startOf(spans[0]!.cut), bottom);
  let at = onWall(startOf(spans[0]!.cut));
  spans.forEach(({ cut, overTab }, i) => {
    recorder.lineTo({ ...startOf(cut), z: recorder.where()!.z }, finish);
    recorder.lineTo({ ...startOf(cut), z: bottom }, plunge);
    recorder.lineTo({ ...pointAt(wall, at), z: bottom }, finish);
    const to = ahead(wall, at, onWall(endOf(cut)));
    recorder.along(trackPart(wall, at, to), bottom, finish);
    recorder.lineTo({ ...endOf(cut), z: bottom }, finish);
    if (!overTab) return;
    const next = ahead(wall, to, onWall(startOf(spans[i + 1]!.cut)));
    recorder.lineTo({ ...endOf(cut), z: tabTop }, finish);
    recorder.lineTo({ ...pointAt(wall, to), z: tabTop }, finish);
    recorder.along(trackPart(wall, to, next), tabTop, finish);
    at = next;
  });
}
