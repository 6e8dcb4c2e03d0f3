import { nonEmpty, type Problem } from '../runtime/index.ts';

/** A problem with the place where the user finds it: a file, an option, a row of a table, a node. */
export interface Fault extends Problem {
  readonly place: string;
}
export type Faults = readonly [Fault, ...Fault[]];

/** A value, or everything that is wrong with what was given. */
export type Found<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly faults: Faults };

/** The longest part of a fault that is printed: foreign text must not flood a terminal. */
const LONGEST_PART = 300;

export function found<T>(value: T): Found<T> {
  return { ok: true, value };
}

export function faulty(place: string, expected: string, foundInstead: string, advice: string): { ok: false; faults: Faults } {
  return { ok: false, faults: [{ place, expected, found: foundInstead, advice }] };
}

/** The value, or the faults gathered on the way to it. */
export function foundUnless<T>(faults: readonly Fault[], value: () => T): Found<T> {
  const some = nonEmpty(faults);
  return some ? { ok: false, faults: some } : found(value());
}

/** Every fault among several outcomes; at least one of them must be faulty. */
export function allFaults(outcomes: readonly Found<unknown>[]): Faults {
  const faults = nonEmpty(outcomes.flatMap((outcome) => (outcome.ok ? [] : outcome.faults)));
  if (!faults) throw new RangeError('no outcome is faulty');
  return faults;
}

/** Puts a problem at its place: `place` alone, or `place, the problem's own place`. */
export function placed(problem: Problem, place: string): Fault {
  const { expected, found: foundInstead, advice } = problem;
  return { place: problem.place ? `${place}, ${problem.place}` : place, expected, found: foundInstead, advice };
}

/** One fault in one line: `where: expected …, found …. Advice`. */
export function faultLine({ place, expected, found: foundInstead, advice }: Fault): string {
  const part = (text: string) => shortened(oneLine(text)).replace(/\.$/, '');
  return `${part(place)}: expected ${part(expected)}, found ${part(foundInstead)}. ${shortened(oneLine(advice))}`;
}

/** Text as one line that cannot steer a terminal: control characters and line breaks become spaces. */
export function oneLine(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]+/gu, ' ').trim();
}

function shortened(text: string): string {
  const letters = [...text];
  return letters.length <= LONGEST_PART ? text : `${letters.slice(0, LONGEST_PART - 1).join('')}…`;
}
