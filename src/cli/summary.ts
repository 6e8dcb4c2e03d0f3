import type { Check, Report } from '../values/index.ts';
import { oneLine } from './fault.ts';
import { table, wrapped } from './layout.ts';

const VERDICT: Readonly<Record<Report['status'], string>> = {
  pass: 'every check passed',
  caution: 'no check failed, but read the cautions',
  fail: 'a check failed',
};

/** A run's report as text for a person: verdict, checks, set-ups, and where the results are. */
export function summary(report: Report, written: { readonly path: string; readonly files: number } | undefined): string {
  const parts = [
    [`${oneLine(report.graph)}: ${report.checks.length === 0 ? 'done; it checks nothing' : VERDICT[report.status]}.`],
    checkLines(report.checks),
    report.cautions.flatMap((caution) => wrapped(`- ${oneLine(caution)}`, '  ')),
    programLines(report),
    [written ? `Written to ${written.path} (${written.files} files).` : 'Nothing was written: give --out DIR to write the results.'],
  ];
  return headed(parts, ['', 'Checks', 'Cautions', 'Programs', '']).join('\n');
}

function headed(parts: readonly (readonly string[])[], heads: readonly string[]): string[] {
  return parts.flatMap((lines, i) => (lines.length === 0 ? [] : [...(i > 0 ? [''] : []), ...(heads[i] ? [heads[i]] : []), ...lines]));
}

/** The worst first: they are what the reader must act on. */
function checkLines(checks: readonly Check[]): string[] {
  const sorted = (['fail', 'caution', 'pass'] as const).flatMap((wanted) => checks.filter(({ status }) => status === wanted));
  return table(sorted.map(({ status, says, at }) => [status, oneLine(says) + (at && status !== 'pass' ? ` At ${at.map(place).join(', ')}.` : '')]));
}

function place(millimetres: number): string {
  return millimetres.toFixed(1);
}

function programLines({ setups }: Report): string[] {
  return setups.flatMap(({ name, shift, programs }) => [
    `  ${oneLine(name)}: program coordinates plus (${shift.map((d) => String(d)).join(', ')}) mm are drawing coordinates`,
    ...table(programs.map(({ file, cutter, minutes, blocks, written }) =>
      [oneLine(file), oneLine(cutter), `${minutes.toFixed(1)} min`, `${blocks} blocks`, written ? '' : 'withheld: a check failed']), { indent: '    ', right: [2, 3] }),
  ]);
}
