import type { Program, SetUp } from '../machining/job/setup.ts';
import { withDraftNotice } from '../machining/program/writer.ts';
import type { Point3 } from '../geometry/point.ts';
import type { Check, Quantities, TextFile } from './check.ts';
import type { Results } from './results.ts';

/** `report.json`, as other programs read it. Lengths mm, times minutes, timings milliseconds. */
export interface Report {
  readonly graph: string;
  readonly status: Results['status'];
  readonly checks: readonly Check[];
  readonly cautions: readonly string[];
  readonly quantities: Quantities;
  readonly setups: readonly ReportSetUp[];
  readonly timings: Readonly<Record<string, number>>;
}

interface ReportSetUp {
  readonly name: string;
  readonly shift: readonly [number, number];
  readonly programs: readonly ReportProgram[];
}

interface ReportProgram {
  readonly file: string;
  /** False when a check failed and no draft was asked for: the file is not there. */
  readonly written: boolean;
  readonly cutter: string;
  readonly cutterDiameter: number;
  readonly reach: { readonly min: readonly number[]; readonly max: readonly number[] };
  readonly minutes: number;
  readonly cuttingMinutes: number;
  readonly blocks: number;
}

interface ReportOptions {
  /** Name of the graph that was run. */
  readonly graph: string;
  /** Milliseconds per node. */
  readonly timings: Readonly<Record<string, number>>;
  readonly draft: boolean;
}

/** Makes the report of a run. */
export function reportOf(results: Results, { graph, timings, draft }: ReportOptions): Report {
  const written = programsAllowed(results, draft);
  return {
    graph,
    status: results.status,
    checks: results.checks,
    cautions: results.cautions.flatMap(({ node, problems }) => problems.map((p) => `${node}: ${p.found}. ${p.advice}`)),
    quantities: results.quantities,
    setups: results.setups.map((setup) => reportSetUp(setup, written)),
    timings,
  };
}

/** The programs that may go to the machine: none when a check failed, unless as a draft that says so. */
export function programFiles(results: Results, { draft }: { readonly draft: boolean }): TextFile[] {
  if (!programsAllowed(results, draft)) return [];
  const marked = (text: string) => (results.status === 'fail' ? withDraftNotice(text) : text);
  return results.setups.flatMap(({ programs }) => programs.map(({ file, text }) => ({ path: file, text: marked(text) })));
}

function programsAllowed(results: Results, draft: boolean): boolean {
  return draft || results.status !== 'fail';
}

function reportSetUp({ name, shift, programs }: SetUp, written: boolean): ReportSetUp {
  return { name, shift, programs: programs.map((program) => reportProgram(program, written)) };
}

function reportProgram({ file, cutter, reach, minutes, cuttingMinutes, blocks }: Program, written: boolean): ReportProgram {
  return {
    file, written, cutter: cutter.name, cutterDiameter: cutter.diameter,
    reach: { min: corner(reach.min), max: corner(reach.max) },
    minutes: rounded(minutes, 3), cuttingMinutes: rounded(cuttingMinutes, 3), blocks,
  };
}

function corner({ x, y, z }: Point3): number[] {
  return [x, y, z].map((value) => rounded(value, 4));
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
