import type { Checking, Link } from './checking.ts';
import { findCycles } from './cycles.ts';
import type { GraphProblem } from './problem.ts';
import { showList } from './show.ts';

/** A set of nodes that need one another's results, and the problem to tell about it. */
export interface CycleFault {
  readonly members: readonly string[];
  readonly problem: GraphProblem;
}

/** The cycles that the wires close. */
export function checkCycles({ ends }: Checking, links: readonly Link[]): CycleFault[] {
  const successors = new Map<string, string[]>();
  for (const { from, to } of links) {
    const known = successors.get(from.node);
    if (known === undefined) successors.set(from.node, [to.node]);
    else known.push(to.node);
  }
  return findCycles([...ends.keys()], successors).map((members) => ({
    members,
    problem: {
      ...(members[0] !== undefined && { node: members[0] }), code: 'cycle', expected: 'wires that lead from node to node without coming back',
      found: `a cycle through ${showList(members)}`, advice: 'Remove one of the wires between these nodes.',
    },
  }));
}
