import { distance, type Point } from '../../geometry/point.ts';
import type { Hole } from '../job/hole.ts';
import { ACRYLIC_EXPANSION } from '../registration/errors.ts';

/** How a board may grow and shrink on its fixings. */
export interface Movement {
  /** Diameter of the screws, mm. */
  readonly screw: number;
  /** Warmest and coldest differ from when it is fitted by this much each way, K. */
  readonly kelvin: number;
}

/** Slots and holes are made in steps of this, mm. */
const STEP = 0.1;

/** How far a place `far` mm from the fixed one moves, each way, mm. */
export const movementAt = (far: number, kelvin: number): number => ACRYLIC_EXPANSION * far * kelvin;

/** The hole that stays where it is: the one nearest to the middle of all, for then the others move least. */
export function fixedHole(holes: readonly Pick<Hole, 'centre'>[]): number {
  const xs = holes.map(({ centre }) => centre.x), ys = holes.map(({ centre }) => centre.y);
  const middle = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
  const away = holes.map(({ centre }) => distance(centre, middle));
  return away.indexOf(Math.min(...away));
}

/** Play that a screw has in a hole towards the fixed one, each way, less what the board moves there, mm; negative where it binds. */
export function sparePlay({ centre, diameter, slot }: Hole, fixed: Point, { screw, kelvin }: Movement): number {
  const towards = Math.atan2(fixed.y - centre.y, fixed.x - centre.x);
  const along = slot ? Math.abs(Math.cos(towards - (slot.angle * Math.PI) / 180)) * (slot.length / 2) : 0;
  return (diameter - screw) / 2 + along - movementAt(distance(centre, fixed), kelvin);
}

/** The hole made a slot that points at the fixed one and lets the board move; as it was where it does already. */
export function asSlot(hole: Hole, fixed: Point, movement: Movement): Hole {
  const round = roundOf(hole);
  const lacking = -sparePlay(round, fixed, movement);
  if (lacking <= 0) return round;
  return { ...round, slot: { length: up(2 * lacking), angle: (Math.atan2(fixed.y - hole.centre.y, fixed.x - hole.centre.x) * 180) / Math.PI } };
}

/** The hole made so wide that the board can move: screw and twice the movement. */
export function asWideHole(hole: Hole, fixed: Point, { screw, kelvin }: Movement): Hole {
  const round = roundOf(hole);
  return { ...round, diameter: Math.max(hole.diameter, up(screw + 2 * movementAt(distance(hole.centre, fixed), kelvin))) };
}

const roundOf = ({ centre, diameter, purpose, setUp }: Hole): Hole => ({ centre, diameter, purpose, ...(setUp !== undefined && { setUp }) });

const up = (length: number): number => Math.round(Math.ceil(length / STEP - 1e-9)) / (1 / STEP);
