import { type Point, distance } from '../../geometry/index.ts';

/** Places as holes: those nearer to one another than this share one, and the first one's place. */
export interface SharedHoles {
  readonly centres: readonly Point[];
  /** The hole that serves a place. */
  readonly of: (place: Point) => Point;
}

export function shareHoles(places: readonly Point[], apart: number): SharedHoles {
  const centres: Point[] = [];
  for (const place of places) if (!centres.some((known) => distance(known, place) < apart)) centres.push(place);
  const of = (place: Point) => centres.reduce((a, b) => (distance(b, place) < distance(a, place) ? b : a));
  return { centres, of };
}
