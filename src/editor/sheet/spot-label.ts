import { type Point, RULER, type Size, type Frame, toScreen } from './view.ts';

/** Where the sentence about a place stands, CSS pixels, and where the line to it ends. */
export interface LabelPlace {
  readonly left: number;
  readonly top: number;
  readonly line: Point;
  /** The sentence stands above the place, and to the left of it. */
  readonly above: boolean;
  readonly leftward: boolean;
}

/** Room the sentence takes at most, CSS pixels: it wraps within. */
export const LABEL: Size = { width: 260, height: 84 };
/** How far the sentence stands from the place. */
const AWAY = { x: 44, y: 40 };

/** Below and to the right of the place; on the other side where there is no room. */
export function labelPlace(frame: Frame, [x, y]: readonly [number, number]): LabelPlace {
  const at = toScreen(frame, { x, y });
  const right = at.x + AWAY.x + LABEL.width <= frame.width;
  const below = at.y + AWAY.y + LABEL.height <= frame.height;
  const left = within(right ? at.x + AWAY.x : at.x - AWAY.x - LABEL.width, RULER + 4, frame.width - LABEL.width - 4);
  const top = within(below ? at.y + AWAY.y : at.y - AWAY.y - LABEL.height, RULER + 4, frame.height - LABEL.height - 4);
  return { left, top, above: !below, leftward: !right, line: { x: left + (right ? 0 : LABEL.width), y: top + (below ? 10 : LABEL.height - 10) } };
}

const within = (value: number, least: number, most: number): number => Math.max(least, Math.min(most, value));
