import { type Box, type Loop, type Point, boxOfPoints, boxesOverlap, growBox, unionBoxes } from '../../geometry/index.ts';
import { holeEnds } from '../job/hole.ts';
import { type Axis, type TilingRequest, LEAD_ROOM } from './request.ts';

/** Stretches along an axis, rising and apart. */
export type Stretches = readonly (readonly [number, number])[];

/** Where cutters' edges go along one axis. */
export interface AxisWork {
  readonly stretches: Stretches;
  /** Both ends of the work. */
  readonly ends: readonly [number, number];
  /** Both ends of the sheet, or of the work where that goes farther. */
  readonly outer: readonly [number, number];
  /** First place with work at or after one; Infinity where there is none. */
  readonly firstFrom: (place: number) => number;
  /** Last place with work at or before one. */
  readonly lastTo: (place: number) => number;
}

/** Boxes of all that is cut, each with the cutter's edge. */
export function workBoxes({ sheet, board, channel, holes, cutters }: TilingRequest): Box[] {
  const widest = Math.max(...cutters);
  const boxes = [
    ...(board?.loops ?? []).map((loop) => outlineBox(boxOfPoints(loop), widest, sheet)),
    ...(channel?.region.loops ?? []).map(boxOfPoints),
    ...holes.map((hole) => grown(boxOfPoints(holeEnds(hole)), hole.diameter / 2)),
  ].filter((box) => box !== undefined);
  return boxes.length > 0 ? boxes : [{ minX: 0, minY: 0, maxX: sheet.width, maxY: sheet.height }];
}

/** The cutter beside the board, and room for it to lead in where the sheet has any. */
function outlineBox(box: Box | undefined, diameter: number, { width, height }: TilingRequest['sheet']): Box | undefined {
  const [cut, led] = [grown(box, diameter), grown(box, diameter + LEAD_ROOM)];
  if (!cut || !led) return undefined;
  return unionBoxes([cut, { minX: Math.max(0, led.minX), minY: Math.max(0, led.minY), maxX: Math.min(width, led.maxX), maxY: Math.min(height, led.maxY) }]);
}

const grown = (box: Box | undefined, by: number): Box | undefined => box && growBox(box, by);

/**
 * Whether anything is cut in a part of the sheet: an edge of the board or of a groove goes through it, or a hole does. The
 * inside of a board is not cut. Without board, channel and holes there is work everywhere.
 */
export function hasWork({ board, channel, holes, cutters }: TilingRequest, part: Box): boolean {
  if (!board && !channel && holes.length === 0) return true;
  const near = growBox(part, Math.max(...cutters));
  return (board?.loops ?? []).some((loop) => loopMeets(loop, near)) || (channel?.region.loops ?? []).some((loop) => loopMeets(loop, part))
    || holes.some((hole) => boxesOverlap(grown(boxOfPoints(holeEnds(hole)), hole.diameter / 2)!, part));
}

const loopMeets = (loop: Loop, box: Box): boolean => loop.some((point, i) => chordMeets(loop.at(i - 1)!, point, box));

/** Clips the chord to the box (Liang and Barsky, ACM Transactions on Graphics 3, 1984, 1-22: from memory). */
function chordMeets(a: Point, b: Point, { minX, minY, maxX, maxY }: Box): boolean {
  let [from, to] = [0, 1];
  for (const [start, along, low, high] of [[a.x, b.x - a.x, minX, maxX], [a.y, b.y - a.y, minY, maxY]] as const) {
    if (along === 0 && (start < low || start > high)) return false;
    if (along === 0) continue;
    const [one, other] = [(low - start) / along, (high - start) / along];
    [from, to] = [Math.max(from, Math.min(one, other)), Math.min(to, Math.max(one, other))];
  }
  return from <= to;
}

/** What there is to cut along one axis of a sheet this long. */
export function axisWork(boxes: readonly Box[], axis: Axis, length: number): AxisWork {
  const stretches = merged(boxes.map((box) => spanOfBox(box, axis)));
  const ends = [stretches[0]![0], stretches.at(-1)![1]] as const;
  return {
    stretches, ends, outer: [Math.min(0, ends[0]), Math.max(length, ends[1])],
    firstFrom: (place) => {
      const next = stretches.find(([, to]) => to >= place);
      return next ? Math.max(place, next[0]) : Infinity;
    },
    lastTo: (place) => {
      const last = stretches.filter(([from]) => from <= place).at(-1);
      return last ? Math.min(place, last[1]) : -Infinity;
    },
  };
}

const spanOfBox = (box: Box, axis: Axis): readonly [number, number] => (axis === 'x' ? [box.minX, box.maxX] : [box.minY, box.maxY]);

function merged(spans: readonly (readonly [number, number])[]): [number, number][] {
  const found: [number, number][] = [];
  for (const [from, to] of [...spans].sort((a, b) => a[0] - b[0])) {
    const last = found.at(-1);
    if (last && from <= last[1]) last[1] = Math.max(last[1], to);
    else found.push([from, to]);
  }
  return found;
}
