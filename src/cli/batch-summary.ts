import type { ResultFile } from '../values/index.ts';
import type { BatchRow } from './batch-table.ts';
import { csvLine } from '../values/index.ts';
import { type Fault, faultLine, type Found, oneLine } from './fault.ts';
import { table } from './layout.ts';
import type { Run } from './run-graph.ts';

/** What became of one row. */
export interface RowSummary {
  readonly row: number;
  readonly line: number;
  /** Absent when the row is wrong: it has no results. */
  readonly folder?: string;
  readonly status: 'pass' | 'caution' | 'fail' | 'wrong';
  /** Programs written, and the time they take together. */
  readonly programs: number;
  readonly minutes: number;
  /** The checks that did not pass, or why the row is wrong. */
  readonly says: readonly string[];
  readonly faults: readonly Fault[];
}

export function rowSummary({ number: row, line }: BatchRow, folder: string, run: Found<Run>): RowSummary {
  if (!run.ok) return { row, line, status: 'wrong', programs: 0, minutes: 0, says: run.faults.map(faultLine), faults: run.faults };
  const { status, checks, setups } = run.value.report;
  const programs = setups.flatMap((setup) => setup.programs);
  return {
    row, line, folder, status,
    programs: programs.filter(({ written }) => written).length,
    minutes: Math.round(programs.reduce((sum, { minutes }) => sum + minutes, 0) * 10) / 10,
    says: checks.filter((check) => check.status !== 'pass').map(({ says }) => oneLine(says)),
    faults: [],
  };
}

/** `summary.csv`: a line for each row of the table, in its order. */
export function summaryFile(rows: readonly RowSummary[]): ResultFile {
  const lines = rows.map(({ row, line, folder, status, programs, minutes, says }) =>
    csvLine([row, line, folder ?? '', status, programs, minutes, says.join(' ')]));
  return { path: 'summary.csv', text: csvLine(['row', 'line', 'folder', 'status', 'programs', 'minutes', 'says']) + lines.join('') };
}

export function batchJson(graph: string, rows: readonly RowSummary[]): unknown {
  return { graph, rows: rows.map(({ faults: _, ...row }) => row) };
}

export function batchText(rows: readonly RowSummary[], path: string): string {
  const cells = rows.map(({ row, folder, status, programs, minutes }) =>
    [String(row), status, folder ?? '', ...(folder === undefined ? [] : [programs === 1 ? '1 program' : `${programs} programs`, `${minutes.toFixed(1)} min`])]);
  const tally = (['pass', 'caution', 'fail', 'wrong'] as const)
    .map((status) => [rows.filter((row) => row.status === status).length, status] as const)
    .filter(([count]) => count > 0);
  return [
    `${rows.length} rows: ${tally.map(([count, status]) => `${count} ${status}`).join(', ')}.`,
    ...table(cells, { right: [0, 3, 4] }),
    `Written to ${path} (with summary.csv).`,
  ].join('\n');
}
