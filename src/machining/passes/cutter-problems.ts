import { type Cutter } from '../job/cutter.ts';
import { type MachiningProblem, type MachiningProblems, millimetres } from '../job/problem.ts';

/** What a cut asks of its cutter: how deep it goes, and how the rest of the request is called. */
export interface CutRequest {
  readonly cutter: Cutter;
  /** Deepest place of the cut below the sheet's top face, mm, positive. */
  readonly depth: number;
  readonly greatestFeed: number;
  /** Height above the sheet where passes begin, mm. */
  readonly retract: number;
}

const POSITIVE = ['diameter', 'feedRate', 'plungeFeed', 'depthOfCut', 'cuttingLength', 'rampAngle'] as const;

/** Everything that keeps a cutter from making a cut of this depth; empty when it can. */
export function cutterProblems({ cutter, depth, greatestFeed, retract }: CutRequest): MachiningProblem[] {
  const problems: MachiningProblem[] = [];
  for (const key of POSITIVE) problems.push(...positive(`cutter ${key}`, cutter[key]));
  problems.push(...positive('depth', depth), ...positive('greatest feed', greatestFeed), ...positive('retract height', retract));
  if (cutter.rampAngle >= 90) {
    problems.push({ place: 'cutter rampAngle', expected: 'an angle under 90 degrees', found: `${millimetres(cutter.rampAngle)} degrees`, advice: 'Use a ramp of 2 to 5 degrees.' });
  }
  if (depth > cutter.cuttingLength + 1e-9) {
    problems.push({
      place: 'cutter', expected: `a cutting edge of at least ${millimetres(depth)} mm`, found: `${millimetres(cutter.cuttingLength)} mm`,
      advice: 'Choose a cutter with a longer cutting edge, or cut less deep.',
    });
  }
  return problems;
}

/** A problem unless the value is a number above 0. */
export function positive(place: string, value: number): MachiningProblem[] {
  if (Number.isFinite(value) && value > 0) return [];
  return [{ place, expected: 'a number above 0', found: String(value), advice: `Give ${place} a value above 0.` }];
}

/** A problem unless the value is a number of at least 0. */
export function notNegative(place: string, value: number): MachiningProblem[] {
  if (Number.isFinite(value) && value >= 0) return [];
  return [{ place, expected: 'a number of at least 0', found: String(value), advice: `Give ${place} a value of 0 or more.` }];
}

/** Wraps problems when there are any. */
export function refusal(problems: readonly MachiningProblem[]): { readonly ok: false; readonly problems: MachiningProblems } | undefined {
  const [first, ...rest] = problems;
  return first ? { ok: false, problems: [first, ...rest] } : undefined;
}
