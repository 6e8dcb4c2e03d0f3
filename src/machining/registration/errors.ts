import type { Point } from '../../geometry/point.ts';
import type { Displacement } from '../job/registration.ts';

/** What one placing of the sheet on its pins may be off by, mm. */
export interface PinErrors {
  /** Diameter of a dowel hole less that of its pin. */
  readonly clearance: number;
  /** Error of a drilled hole's place. */
  readonly pitchError: number;
}

/** How far a dowel hole may lie off its pin, sideways, mm. */
export const placingError = ({ clearance, pitchError }: PinErrors): number => clearance / 2 + pitchError;

/** Angle by which a sheet may turn when one of its pins is off sideways by `error`, over a pin distance, rad: e / p. */
export const pinAngle = (error: number, distance: number): number => error / distance;

/** Error that turn makes at a place `far` mm from the first pin, mm; twice it when both pins are off, either way. */
export const farError = (error: number, distance: number, far: number): number => pinAngle(error, distance) * far;

/** Errors of `moves` moves one after the other, each a pitch on and turned by `angle` rad: a P (1 + 2 + ... + n), mm. */
export const accumulatedWorst = (angle: number, pitch: number, moves: number): number => (angle * pitch * moves * (moves + 1)) / 2;

/** The same where the turns are independent: a P sqrt(1 + 4 + ... + n^2), mm. */
export const accumulatedLikely = (angle: number, pitch: number, moves: number): number =>
  angle * pitch * Math.sqrt((moves * (moves + 1) * (2 * moves + 1)) / 6);

/** Linear expansion of cast acrylic, 1/K: the usual figure (ISO 11359-2; Unified Facilities Criteria 4-159-01 gives 7.2e-5 at 60 F). */
export const ACRYLIC_EXPANSION = 7e-5;
/** That of aluminium, of which beds are often made, 1/K (from memory). */
const ALUMINIUM_EXPANSION = 23e-6;

/** How much more the sheet's pin distance grows than the bed's when both warm by `kelvin`, mm. */
export const pitchGrowth = (distance: number, kelvin: number, sheet = ACRYLIC_EXPANSION, bed = ALUMINIUM_EXPANSION): number => (sheet - bed) * distance * kelvin;

export interface MeasuredPins extends Displacement {
  /** How much farther apart the pins were found than they should be, mm. */
  readonly misfit: number;
}

/**
 * How a sheet lies whose two pins were found elsewhere than they should be: turned by the angle between the two lines,
 * then shifted so that the middles agree; all in program coordinates, the turn about their zero.
 */
export function measuredPins([a, b]: readonly [Point, Point], [foundA, foundB]: readonly [Point, Point]): MeasuredPins {
  const angle = Math.atan2(foundB.y - foundA.y, foundB.x - foundA.x) - Math.atan2(b.y - a.y, b.x - a.x);
  const turned = Math.atan2(Math.sin(angle), Math.cos(angle));
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const [c, s] = [Math.cos(turned), Math.sin(turned)];
  return {
    degrees: (turned * 180) / Math.PI,
    shift: [(foundA.x + foundB.x) / 2 - (c * middle.x - s * middle.y), (foundA.y + foundB.y) / 2 - (s * middle.x + c * middle.y)],
    misfit: Math.hypot(foundB.x - foundA.x, foundB.y - foundA.y) - Math.hypot(b.x - a.x, b.y - a.y),
  };
}
