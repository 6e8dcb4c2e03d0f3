import { type Plane } from './types.ts';

/** Axis numbers of a plane: the turn from `first` to `second` is counter-clockwise seen from the end of `normal`. */
export interface PlaneAxes {
  readonly first: 0 | 1 | 2;
  readonly second: 0 | 1 | 2;
  readonly normal: 0 | 1 | 2;
}

export const PLANE_AXES: Readonly<Record<Plane, PlaneAxes>> = {
  XY: { first: 0, second: 1, normal: 2 },
  XZ: { first: 2, second: 0, normal: 1 },
  YZ: { first: 1, second: 2, normal: 0 },
};
