import { type Point } from '../../geometry/index.ts';
import { type EntryStyle, rampBackAndForth } from './entry.ts';
import { AIR_GAP, type Recorder } from './recorder.ts';
import { pointAt, type Track, trackPart } from './track.ts';
import { nearestOnTrack } from './track-query.ts';

/** A stretch of a closed track between two tabs, and the way over the tab that follows it. */
export interface Span {
  readonly cut: Track;
  readonly overTab: Track;
}

/** The stretches between tab zones of this length about the places given (distances along the track, rising). */
export function spansBetween(track: Track, places: readonly number[], zone: number): Span[] {
  return places.map((place, i) => {
    const next = places[i + 1] ?? places[0]! + track.length;
    return {
      cut: trackPart(track, place + zone / 2, next - zone / 2),
      overTab: trackPart(track, next - zone / 2, next + zone / 2),
    };
  });
}

export interface TabCut {
  readonly spans: readonly Span[];
  /** Height of the tabs' tops, where the whole track has been cut already. */
  readonly tabTop: number;
  /** Layers from the tabs' tops down. */
  readonly layers: readonly number[];
  readonly style: EntryStyle;
}

/** Cuts the stretches between tabs layer by layer, entering each by a ramp forth and back and passing over the tabs. */
export function cutBetweenTabs(recorder: Recorder, { spans, tabTop, layers, style }: TabCut): void {
  recorder.comeDown(startOf(spans[0]!.cut), tabTop);
  let floor = tabTop;
  for (const z of layers) {
    for (const { cut, overTab } of spans) {
      recorder.lineTo({ ...startOf(cut), z: floor }, style.feeds.plunge);
      rampBackAndForth(recorder, cut, z, style);
      recorder.along(cut, z, style.feeds.cut);
      recorder.lineTo({ ...recorder.where()!, z: tabTop + AIR_GAP }, style.feeds.cut);
      recorder.along(overTab, tabTop + AIR_GAP, style.feeds.cut);
    }
    floor = z;
  }
}

export interface TabFinish {
  /** The stretches as roughed, whose ends are free places to go down and up in. */
  readonly spans: readonly Span[];
  /** The track along the finished edge. */
  readonly wall: Track;
  readonly tabTop: number;
  readonly bottom: number;
  readonly style: EntryStyle;
}

/** Finishes the edge between tabs at full depth and above the tabs at their tops' height, going up and down off the edge. */
export function finishBetweenTabs(recorder: Recorder, { spans, wall, tabTop, bottom, style }: TabFinish): void {
  const { finish, plunge } = style.feeds;
  const stretches = spans.map(({ cut }, i) => {
    const from = along(wall, startOf(cut));
    const to = ahead(wall, from, along(wall, endOf(cut)));
    return { cut, from, to, next: ahead(wall, to, along(wall, startOf(spans[(i + 1) % spans.length]!.cut))) };
  });
  recorder.comeDown(startOf(spans[0]!.cut), bottom);
  for (const { cut, from, to, next } of stretches) {
    recorder.lineTo({ ...startOf(cut), z: recorder.where()!.z }, finish);
    recorder.lineTo({ ...startOf(cut), z: bottom }, plunge);
    recorder.lineTo({ ...pointAt(wall, from), z: bottom }, finish);
    recorder.along(trackPart(wall, from, to), bottom, finish);
    recorder.lineTo({ ...endOf(cut), z: bottom }, finish);
    recorder.lineTo({ ...endOf(cut), z: tabTop }, finish);
    recorder.lineTo({ ...pointAt(wall, to), z: tabTop }, finish);
    recorder.along(trackPart(wall, to, next), tabTop, finish);
  }
  recorder.lineTo({ ...startOf(spans[0]!.cut), z: tabTop }, finish);
}

export const startOf = (track: Track): Point => track.pieces[0]!.from;
export const endOf = (track: Track): Point => track.pieces.at(-1)!.to;
const along = (track: Track, place: Point): number => nearestOnTrack(track, place)!.at;
/** The same place of a closed track, counted so that it lies ahead of another. */
export const ahead = (track: Track, from: number, to: number): number => (to < from ? to + track.length : to);
