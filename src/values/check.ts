export type CheckStatus = 'pass' | 'caution' | 'fail';

/** One thing that was looked at: what came out, what was allowed, where the worst place is, and a sentence about it. */
export interface Check {
  readonly check: string;
  readonly status: CheckStatus;
  readonly value: number;
  readonly limit: number;
  readonly unit: string;
  readonly at?: readonly [number, number];
  /** A sentence that says value, limit and, unless it passed, what to do. */
  readonly says: string;
}

export interface Quantity {
  readonly value: number;
  readonly unit: string;
}
export type Quantities = Readonly<Record<string, Quantity>>;

/** A file of results, its path relative to the results folder, with forward slashes. */
export type ResultFile = TextFile | BinaryFile;

export interface TextFile {
  readonly path: string;
  readonly text: string;
}

/** Bytes as base64 of RFC 4648 section 4: plain data, as a PDF or a picture. */
export interface BinaryFile {
  readonly path: string;
  readonly base64: string;
}

/** Characters of a text file, bytes of any other. */
export const fileLength = (file: ResultFile): number =>
  ('text' in file ? file.text.length : (file.base64.length / 4) * 3 - (/=*$/.exec(file.base64)?.[0].length ?? 0));

const RANK: Readonly<Record<CheckStatus, number>> = { pass: 0, caution: 1, fail: 2 };

/** The worst status among checks; no check at all counts as passed. */
export function worstStatus(checks: readonly Check[]): CheckStatus {
  return checks.reduce<CheckStatus>((worst, { status }) => (RANK[status] > RANK[worst] ? status : worst), 'pass');
}

export interface Finding {
  readonly check: string;
  readonly value: number;
  readonly limit: number;
  readonly unit: string;
  readonly at?: { readonly x: number; readonly y: number };
  /** What was looked at, such as `Least bend radius`. */
  readonly subject: string;
  /** What to do when the limit is not kept. */
  readonly advice: string;
}

/** Judges a value that should be at least its limit; `kind` says how serious it is when it is not. */
export function atLeast(finding: Finding, kind: 'caution' | 'fail' = 'fail'): Check {
  return judged(finding, finding.value >= finding.limit, kind, 'at least');
}

/** Judges a value that should be at most its limit. */
export function atMost(finding: Finding, kind: 'caution' | 'fail' = 'fail'): Check {
  return judged(finding, finding.value <= finding.limit, kind, 'at most');
}

/** Judges a value that is refused below one limit and worth a caution below a higher one; the limit told is the one that counts. */
export function atLeastGraded(finding: Omit<Finding, 'limit'>, { refuse, caution }: { readonly refuse: number; readonly caution: number }): Check {
  return finding.value < refuse ? atLeast({ ...finding, limit: refuse }) : atLeast({ ...finding, limit: Math.max(caution, refuse) }, 'caution');
}

function judged(finding: Finding, kept: boolean, kind: 'caution' | 'fail', word: string): Check {
  const { check, value, limit, unit, at, subject, advice } = finding;
  const sentence = `${subject}: ${amount(value, unit)}, ${word} ${amount(limit, unit)}.`;
  return {
    check, status: kept ? 'pass' : kind, value, limit, unit,
    ...(at && { at: [at.x, at.y] as const }),
    says: kept ? sentence : `${sentence} ${advice}`,
  };
}

/** A number as a bench would read it: three decimals at most, no trailing zeros, with its unit. */
export function amount(value: number, unit: string): string {
  if (!Number.isFinite(value)) return 'no limit';
  const number = String(Math.round(value * 1000) / 1000);
  return unit === 'count' || unit === '' ? number : `${number} ${raised(unit)}`;
}

const POWER = /(m|s)([23])\b/g;
const RAISED = { 2: '²', 3: '³' } as const;

/** A unit as people read it: with raised digits, where programs write mm2. */
export const raised = (unit: string): string => unit.replace(POWER, (_, before: string, power: '2' | '3') => before + RAISED[power]);
