import type { Spot } from '../state/editor.ts';
import type { PictureItem } from '../../values/picture.ts';
import type { NodePicture } from '../worker/protocol.ts';
import { shapeOf } from './shapes.ts';
import { type Frame, type Point, middleOf, toScreen } from './view.ts';

/** A place where a stroke could have gone another way, and the radius of its ring, mm. */
export interface DoubtSpot extends Spot {
  readonly radius: number;
}

/** Radius of a ring on the screen at least, CSS pixels. */
const LEAST = 9;

/** The doubts drawn in a node's picture, unless their layer is hidden. */
export function doubtsOf(picture: NodePicture | undefined, hidden: ReadonlySet<string>): readonly DoubtSpot[] {
  if (!picture) return [];
  const layers = picture.outputs.layers.filter(({ kind, name }) => kind === 'doubts' && !hidden.has(name));
  const all = layers.flatMap(({ items }) => items.flatMap((item): DoubtSpot[] => {
    const ring = ringOf(item);
    return ring ? [{ at: [ring.at.x, ring.at.y], radius: ring.radius, says: item.title ?? 'doubtful', status: 'caution', node: picture.node }] : [];
  }));
  // A stroke that crosses itself has the same doubt twice.
  return [...new Map(all.map((doubt) => [JSON.stringify([doubt.at, doubt.says]), doubt])).values()];
}

/** The ring an item is: its middle and radius, mm. */
export function ringOf(item: PictureItem): { readonly at: Point; readonly radius: number } | undefined {
  const { box } = shapeOf(item);
  return box && { at: middleOf(box), radius: (box.maxX - box.minX) / 2 };
}

/** How large the ring is on the screen, CSS pixels: never so small that it is not seen as one. */
export const ringRadius = (radius: number, { scale }: Pick<Frame, 'scale'>): number => Math.max(LEAST, radius * scale);

/** The doubts whose rings are around a screen place, the nearest first. */
export function doubtsAt(doubts: readonly DoubtSpot[], frame: Frame, { x, y }: Point): readonly DoubtSpot[] {
  const away = ({ at }: DoubtSpot) => {
    const place = toScreen(frame, { x: at[0], y: at[1] });
    return Math.hypot(place.x - x, place.y - y);
  };
  return doubts.filter((doubt) => away(doubt) <= ringRadius(doubt.radius, frame) + 2).toSorted((a, b) => away(a) - away(b));
}
