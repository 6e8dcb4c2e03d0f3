import type { Point } from '../../geometry/point.ts';

/** A round hole through the sheet. */
export interface Hole {
  readonly centre: Point;
  readonly diameter: number;
  readonly purpose: 'cable' | 'mounting';
}
