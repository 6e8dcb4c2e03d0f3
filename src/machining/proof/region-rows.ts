import { type Region } from '../../geometry/region.ts';
import { type Capsule, capsuleSpan } from './capsule.ts';

/** Tells where the row at height y crosses a region's boundary, ascending; must be asked for ascending y. */
export type RowCrossings = (y: number) => readonly number[];

interface Edge {
  readonly fromX: number;
  readonly fromY: number;
  readonly toY: number;
  readonly run: number;
}

/**
 * Walks a region row by row. A vertex belongs to the edge above it (fromY <= y < toY), so crossings always come in pairs,
 * and between the first and second, third and fourth ... of them the row is inside the region.
 */
export function rowCrossings(region: Region): RowCrossings {
  const edges = edgesOf(region).sort((a, b) => a.fromY - b.fromY);
  let next = 0;
  let active: Edge[] = [];
  return (y) => {
    while (next < edges.length && edges[next]!.fromY <= y) active.push(edges[next++]!);
    active = active.filter((edge) => edge.toY > y);
    return active.map((edge) => edge.fromX + (y - edge.fromY) * edge.run).sort((a, b) => a - b);
  };
}

function edgesOf({ loops }: Region): Edge[] {
  return loops.flatMap((loop) => loop.flatMap((a, i) => {
    const b = loop[(i + 1) % loop.length]!;
    if (a.y === b.y) return [];
    const [lower, upper] = a.y < b.y ? [a, b] : [b, a];
    return [{ fromX: lower.x, fromY: lower.y, toY: upper.y, run: (upper.x - lower.x) / (upper.y - lower.y) }];
  }));
}

/** Where the row at height y crosses the union of capsules, ascending, in pairs. */
export function capsuleCrossings(capsules: readonly Capsule[], y: number): number[] {
  const spans = capsules.flatMap((capsule) => {
    const span = capsuleSpan(capsule, y);
    return span ? [span] : [];
  });
  spans.sort((a, b) => a[0] - b[0]);
  const merged: number[] = [];
  for (const [left, right] of spans) {
    const last = merged.length - 1;
    if (last >= 0 && left <= merged[last]!) merged[last] = Math.max(merged[last]!, right);
    else merged.push(left, right);
  }
  return merged;
}
