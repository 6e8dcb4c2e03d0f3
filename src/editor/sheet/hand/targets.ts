import type { PlaceOn } from '../../../runtime/index.ts';
import { distance, nearestOn } from '../near.ts';
import { shapeOf } from '../shapes.ts';
import { type Frame, type Point, toScreen } from '../view.ts';
import { placeAlong, trackOf } from './along.ts';
import { pegPlaces } from './pegs.ts';
import { type Stretch, piecesOf } from './pieces.ts';
import { type Way, kindOfPlace } from './ways.ts';

/** Something a place of an edit can be taken from, and the place, mm. Numbers count from 0 as in the junction map. */
export type Target =
  | { readonly kind: 'junction'; readonly junction: number; readonly at: Point }
  | { readonly kind: 'arm'; readonly junction: number; readonly arm: number; readonly at: Point }
  | { readonly kind: 'end'; readonly end: number; readonly at: Point }
  | { readonly kind: 'stroke'; readonly stroke: number; readonly at: Point }
  | { readonly kind: 'anywhere'; readonly at: Point };

/** Pixels within which a line, and a single thing, is pointed at. */
const REACH = { line: 10, thing: 12 } as const;

/** What the next place is taken from, given those taken already. */
export const nextKind = (way: Way, picked: readonly Target[]): PlaceOn => kindOfPlace(way, picked.length);

/** Everything the next place can be taken from, left to right; a stroke or a piece of one by its middle. None where it can be anywhere. */
export function offered(way: Way, picked: readonly Target[]): readonly Target[] {
  switch (nextKind(way, picked)) {
    case 'stroke': return leftToRight(way.strokes.flatMap((item, stroke) => middleOfPiece(way, stroke, { from: 0, to: trackOf(shapeOf(item)).length })));
    case 'piece': return leftToRight(way.strokes.flatMap((_, stroke) => piecesOf(way, stroke).flatMap((piece) => middleOfPiece(way, stroke, piece))));
    case 'end': return leftToRight(endsLeft(way, picked));
    case 'junction': return leftToRight(way.map.junctions.map(({ at }, junction): Target => ({ kind: 'junction', junction, at })));
    case 'arm': return armsLeft(way, picked);
    case 'anywhere': return [];
  }
}

function middleOfPiece({ strokes }: Way, stroke: number, { from, to }: Stretch): Target[] {
  const track = trackOf(shapeOf(strokes[stroke]!));
  const middle = (from + to) / 2;
  const at = placeAlong(track, middle > track.length ? middle - track.length : middle);
  return at ? [{ kind: 'stroke', stroke, at }] : [];
}

const leftToRight = (targets: readonly Target[]): readonly Target[] => targets.toSorted((a, b) => a.at.x - b.at.x || b.at.y - a.at.y);

const endsLeft = ({ map }: Way, picked: readonly Target[]): Target[] =>
  map.ends.map(({ at }, end): Target => ({ kind: 'end', end, at })).filter((one) => !picked.some((other) => sameTarget(one, other)));

/** Arms of the junction taken, without those taken already. */
function armsLeft(way: Way, picked: readonly Target[]): Target[] {
  const taken = picked.findLast((one) => one.kind === 'junction');
  return taken ? armsOf(way, taken.junction).filter((one) => !picked.some((other) => sameTarget(one, other))) : [];
}

function armsOf({ map }: Way, junction: number): Target[] {
  return (map.junctions[junction]?.arms ?? []).map(({ at }, arm): Target => ({ kind: 'arm', junction, arm, at }));
}

/** Places nearer than this, in mm, are the same. */
const SAME_PLACE = 1e-6;

/** Whether two targets are the same thing, wherever on it the place is. */
export function sameTarget(a: Target, b: Target): boolean {
  switch (a.kind) {
    case 'junction': return b.kind === 'junction' && a.junction === b.junction;
    case 'arm': return b.kind === 'arm' && a.junction === b.junction && a.arm === b.arm;
    case 'end': return b.kind === 'end' && a.end === b.end;
    // Several pieces of a stroke are told apart by their places.
    case 'stroke': return b.kind === 'stroke' && a.stroke === b.stroke && distance(a.at, b.at) < SAME_PLACE;
    case 'anywhere': return b.kind === 'anywhere' && distance(a.at, b.at) === 0;
  }
}

/** What lies under a place of the sheet that the next place can be taken from. A peg stands for its junction too. */
export function aimedAt(way: Way, picked: readonly Target[], at: Point, frame: Frame): Target | undefined {
  switch (nextKind(way, picked)) {
    case 'stroke':
    case 'piece': return strokeAt(way, at, REACH.line / frame.scale);
    case 'end': return nearest(endsLeft(way, picked), ({ at: place }) => distance(place, at) * frame.scale, REACH.thing);
    case 'arm': return pegAt(way, armsLeft(way, picked), at, frame);
    case 'junction': return junctionAt(way, picked, at, frame);
    case 'anywhere': return { kind: 'anywhere', at };
  }
}

function strokeAt({ strokes }: Way, at: Point, within: number): Target | undefined {
  const near = strokes.flatMap((item, stroke) => {
    const found = nearestOn(shapeOf(item), at, within);
    return found ? [{ stroke, ...found }] : [];
  }).sort((a, b) => a.distance - b.distance)[0];
  return near && { kind: 'stroke', stroke: near.stroke, at: near.at };
}

function junctionAt(way: Way, picked: readonly Target[], at: Point, frame: Frame): Target | undefined {
  const { junctions } = way.map;
  const pegs = kindOfPlace(way, picked.length + 1) === 'arm' ? junctions.flatMap((_, junction) => armsOf(way, junction)) : [];
  const targets = junctions.map(({ at: place }, junction): Target => ({ kind: 'junction', junction, at: place }));
  return pegAt(way, pegs, at, frame) ?? nearest(targets, ({ at: place }) => distance(place, at) * frame.scale, REACH.thing);
}

function pegAt(way: Way, arms: readonly Target[], at: Point, frame: Frame): Target | undefined {
  const screen = toScreen(frame, at);
  return nearest(arms, (arm) => distance(screenPlace(way, arm, frame), screen), REACH.thing);
}

function nearest(targets: readonly Target[], far: (target: Target) => number, within: number): Target | undefined {
  return targets.map((target) => ({ target, away: far(target) })).filter(({ away }) => away <= within).sort((a, b) => a.away - b.away)[0]?.target;
}

/** Where a target is drawn and pointed at, CSS pixels: an arm at its peg. */
export function screenPlace({ map }: Way, target: Target, frame: Frame): Point {
  const junction = target.kind === 'arm' ? map.junctions[target.junction] : undefined;
  const peg = junction && target.kind === 'arm' ? pegPlaces(junction, frame)[target.arm] : undefined;
  return peg ?? toScreen(frame, target.at);
}

/** How far another target is from one that is not among them, as one slid along its stroke: the same stroke's first. */
const rankFrom = (present: Target, other: Target): number =>
  distance(present.at, other.at) + (present.kind === 'stroke' && other.kind === 'stroke' && present.stroke === other.stroke ? 0 : 1e6);

/** The target after the present one, or before it; from none, the one nearest to `from`, else the first or the last. */
export function nextTarget(targets: readonly Target[], present: Target | undefined, step: 1 | -1, from?: Point): Target | undefined {
  const index = present ? targets.findIndex((one) => sameTarget(one, present)) : -1;
  if (index === -1 && present) return nextTarget(targets, targets.toSorted((a, b) => rankFrom(present, a) - rankFrom(present, b))[0], step);
  if (index !== -1) return targets[(index + step + targets.length) % targets.length];
  if (from) return targets.toSorted((a, b) => distance(a.at, from) - distance(b.at, from))[0];
  return step === 1 ? targets[0] : targets.at(-1);
}
