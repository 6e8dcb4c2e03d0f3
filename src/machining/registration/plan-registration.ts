import type { Point } from '../../geometry/point.ts';
import { type MachiningProblem, placeName } from '../job/problem.ts';
import type { Dowel, Pin } from '../job/registration.ts';
import { refusal } from '../passes/cutter-problems.ts';
import { pitchGrowth } from './errors.ts';
import { type Link, linkSetUps } from './links.ts';
import { makePlaces } from './places.ts';
import type { RegistrationOutcome, RegistrationRequest } from './request.ts';
import { seamSteps } from './seam-steps.ts';

/** Two pins in the spoilboard count as one when they are nearer than this, mm. */
const SAME_PIN = 0.005;

/**
 * Pins in the spoilboard and holes in the sheet, by which every set-up after the first finds its place. The holes of a
 * set-up are drilled in an earlier one next to it, a shift away from where they are used: one round, one a slot along
 * the line of the pins, so that the sheet may grow and is not held twice.
 */
export function planRegistration(request: RegistrationRequest): RegistrationOutcome {
  const found = linkSetUps(request);
  const refused = refusal(found.filter((one) => !('pins' in one)).map(({ setUp }) => noPlace(request, setUp)));
  if (refused) return refused;
  const links = found as readonly Link[];
  const pins: Pin[] = [];
  const dowels = links.flatMap((link) => dowelsOf(request, link, pins));
  const { clearance, pitchError } = request;
  return { ok: true, registration: { pins, dowels, clearance, pitchError, steps: seamSteps(request, links), corrections: [] } };
}

function noPlace({ tiling, pinDiameter }: RegistrationRequest, setUp: number): MachiningProblem {
  return {
    place: tiling.tiles[setUp]!.name, expected: `two places for pins of ${pinDiameter} mm that two set-ups reach`, found: 'fewer than two',
    advice: 'Take thinner pins or a wider lap, leave more waste round the board, or put the pins by hand.',
  };
}

/** The holes of one set-up; their pins are added to those there are. */
function dowelsOf(request: RegistrationRequest, { setUp, drilledIn, pins: [first, second] }: Link, pins: Pin[]): Dowel[] {
  const { pinDiameter, clearance, kelvin, pitchError, tiling } = request;
  const lies = makePlaces(request);
  const [dx, dy] = tiling.tiles[setUp]!.shift;
  const distance = Math.hypot(second.x - first.x, second.y - first.y);
  const slot = { length: slotLength(distance, kelvin, pitchError), angle: (Math.atan2(second.y - first.y, second.x - first.x) * 180) / Math.PI };
  return [first, second].map((at, i): Dowel => {
    const centre = { x: at.x + dx, y: at.y + dy };
    return {
      hole: { centre, diameter: pinDiameter + clearance, purpose: 'dowel', setUp: drilledIn, ...(i === 1 && { slot }) },
      pin: pinAt(pins, at, pinDiameter), drilledIn, usedIn: setUp, lies: lies(centre) ?? 'board',
    };
  });
}

/** What the slot must give each way: the sheet's growth against the bed, and both holes' errors; in tenths. */
const slotLength = (distance: number, kelvin: number, pitchError: number): number =>
  Math.ceil(20 * (Math.abs(pitchGrowth(distance, kelvin)) + 2 * pitchError)) / 10;

function pinAt(pins: Pin[], at: Point, diameter: number): number {
  const there = pins.findIndex((pin) => Math.hypot(pin.at.x - at.x, pin.at.y - at.y) < SAME_PIN);
  return there === -1 ? pins.push({ at, diameter }) - 1 : there;
}

/** Dowel holes put by hand where none may be: on the cut, in a hole, off the sheet, or in view. */
export function dowelProblems(request: RegistrationRequest, dowels: readonly Dowel[]): MachiningProblem[] {
  const lies = makePlaces(request);
  return dowels.filter(({ hole }) => lies(hole.centre) === undefined).map(({ hole: { centre } }) => ({
    place: placeName(centre), expected: 'a place clear of cuts, holes and the sheet\'s edge', found: 'one that is not', advice: 'Move the pin.',
  }));
}
