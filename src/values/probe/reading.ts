import type { Point } from '../../geometry/index.ts';
import type { Reading } from '../picture.ts';

export function reading(says: string, value: number, unit: string, { x, y }: Point): Reading {
  return { says, value, unit, at: [x, y] };
}
