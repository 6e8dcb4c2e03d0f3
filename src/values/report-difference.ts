import type { Check, CheckStatus } from './check.ts';
import type { Report } from './report.ts';

/** A figure of two runs side by side; absent in the run that does not have it. */
export interface FigureChange {
  readonly of: 'check' | 'quantity' | 'program' | 'status';
  readonly name: string;
  readonly unit: string;
  readonly from?: number | string;
  readonly to?: number | string;
  /** For a check: how it was judged. */
  readonly judged?: readonly [CheckStatus | undefined, CheckStatus | undefined];
}

/** Figures that differ by less than this share of the larger are told as equal: they are printed alike. */
const ALIKE = 1e-9;

/** What comes out otherwise: status, checks, quantities, minutes and blocks of programs. Checks of one name are told apart by their place in the report. */
export function reportChanges(a: Report, b: Report): readonly FigureChange[] {
  return [
    ...(a.status === b.status ? [] : [{ of: 'status' as const, name: 'status', unit: '', from: a.status, to: b.status }]),
    ...sideBySide(numbered(a.checks), numbered(b.checks)).flatMap(([name, from, to]) => checkChange(name, from, to)),
    ...sideBySide(new Map(Object.entries(a.quantities)), new Map(Object.entries(b.quantities)))
      .flatMap(([name, from, to]) => (alike(from?.value, to?.value) ? [] : [figure('quantity', name, (to ?? from)!.unit, from?.value, to?.value)])),
    ...sideBySide(programsOf(a), programsOf(b)).flatMap(([name, from, to]) => (['minutes', 'blocks'] as const)
      .flatMap((what) => (alike(from?.[what], to?.[what]) ? [] : [figure('program', `${name} ${what}`, what === 'minutes' ? 'min' : 'count', from?.[what], to?.[what])]))),
  ];
}

function sideBySide<T>(a: ReadonlyMap<string, T>, b: ReadonlyMap<string, T>): (readonly [string, T | undefined, T | undefined])[] {
  return [...new Set([...a.keys(), ...b.keys()])].map((name) => [name, a.get(name), b.get(name)] as const);
}

/** Checks by name, numbered from the second of a name on. */
function numbered(checks: readonly Check[]): Map<string, Check> {
  const counts = new Map<string, number>();
  return new Map(checks.map((check) => {
    const count = (counts.get(check.check) ?? 0) + 1;
    counts.set(check.check, count);
    return [count === 1 ? check.check : `${check.check} ${count}`, check];
  }));
}

const programsOf = ({ setups }: Report) => new Map(setups.flatMap(({ programs }) => programs.map((program) => [program.file, program] as const)));

const alike = (a: number | undefined, b: number | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && (Math.abs(a - b) <= ALIKE * Math.max(Math.abs(a), Math.abs(b)) || (Number.isNaN(a) && Number.isNaN(b))));

function checkChange(name: string, from: Check | undefined, to: Check | undefined): FigureChange[] {
  if (from?.status === to?.status && alike(from?.value, to?.value) && alike(from?.limit, to?.limit)) return [];
  return [{ ...figure('check', name, (to ?? from)!.unit, from?.value, to?.value), judged: [from?.status, to?.status] }];
}

const figure = (of: FigureChange['of'], name: string, unit: string, from: number | undefined, to: number | undefined): FigureChange =>
  ({ of, name, unit, ...(from !== undefined && { from }), ...(to !== undefined && { to }) });
