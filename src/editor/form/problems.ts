import type { NodeReport } from '../worker/protocol.ts';
import { entryNamed } from './edits-text.ts';
import type { FieldProblem } from './field.ts';

/** What a node's report tells about one of its parameters, as a whole or at an entry of its list. */
export function problemsAt(report: NodeReport | undefined, name: string): readonly FieldProblem[] {
  const at = (kind: FieldProblem['kind'], problems: NodeReport['problems']) => problems.flatMap((problem): FieldProblem[] => {
    const entry = entryNamed(name, problem.place);
    return entry === undefined ? (problem.place === name ? [{ kind, problem }] : []) : [{ kind, problem, at: entry }];
  });
  return report === undefined ? [] : [...at('problem', report.problems), ...at('caution', report.cautions)];
}
