/**
 * The cycles of a directed graph, each as the list of its members: every strongly connected component that has more than
 * one member, or a member with an edge to itself. Tarjan's algorithm, with its own stack so that a chain of any length
 * fits. Members stand in the order of `nodes`, components in the order of their first member.
 *
 * Source: R. Tarjan, Depth-first search and linear graph algorithms, SIAM J. Comput. 1 (1972) 146-160.
 */
export function findCycles(nodes: readonly string[], successors: ReadonlyMap<string, readonly string[]>): string[][] {
  const rank = new Map(nodes.map((node, i) => [node, i]));
  const inOrder = (a: string, b: string) => rank.get(a)! - rank.get(b)!;
  return components(nodes, successors)
    .filter(([first, ...rest]) => rest.length > 0 || successors.get(first!)?.includes(first!))
    .map((members) => members.sort(inOrder))
    .sort(([a], [b]) => inOrder(a!, b!));
}

interface Visit {
  readonly node: string;
  readonly index: number;
  /** Least index reachable through edges seen so far. */
  low: number;
  /** How many successors have been looked at. */
  seen: number;
}

function components(nodes: readonly string[], successors: ReadonlyMap<string, readonly string[]>): string[][] {
  const visits = new Map<string, Visit>();
  const open: string[] = [];
  const isOpen = new Set<string>();
  const found: string[][] = [];
  const enter = (node: string): Visit => {
    const visit = { node, index: visits.size, low: visits.size, seen: 0 };
    visits.set(node, visit);
    open.push(node);
    isOpen.add(node);
    return visit;
  };
  const leave = ({ node }: Visit) => {
    const members = open.splice(open.lastIndexOf(node));
    for (const member of members) isOpen.delete(member);
    found.push(members);
  };
  for (const root of nodes) {
    const path = visits.has(root) ? [] : [enter(root)];
    for (let visit = path.at(-1); visit !== undefined; visit = path.at(-1)) {
      const next = successors.get(visit.node)?.[visit.seen++];
      if (next === undefined) {
        path.pop();
        const parent = path.at(-1);
        if (parent) parent.low = Math.min(parent.low, visit.low);
        if (visit.low === visit.index) leave(visit);
      } else if (!visits.has(next)) path.push(enter(next));
      else if (isOpen.has(next)) visit.low = Math.min(visit.low, visits.get(next)!.index);
    }
  }
  return found;
}
