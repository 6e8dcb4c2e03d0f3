import { type Box, boxesOverlap } from './box.ts';

/**
 * Parts the indices of boxes into groups: boxes that overlap or touch, directly or through others, share a group.
 * Groups come in the order of their first member, members in rising order. Sweeps by x, near n log n for scattered boxes.
 */
export function overlapGroups(boxes: readonly Box[]): number[][] {
  const parent = boxes.map((_, i) => i);
  const root = (i: number): number => {
    let at = i;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  };
  let active: number[] = [];
  for (const i of boxes.map((_, at) => at).sort((a, b) => boxes[a]!.minX - boxes[b]!.minX)) {
    const box = boxes[i]!;
    active = active.filter((other) => boxes[other]!.maxX >= box.minX);
    for (const other of active) if (boxesOverlap(box, boxes[other]!)) parent[root(other)] = root(i);
    active.push(i);
  }
  return gather(boxes.length, root);
}

function gather(count: number, root: (i: number) => number): number[][] {
  const groups = new Map<number, number[]>();
  for (let i = 0; i < count; i += 1) {
    const key = root(i);
    const group = groups.get(key);
    if (group) group.push(i);
    else groups.set(key, [i]);
  }
  return [...groups.values()];
}

/** The indices of those boxes that overlap or touch one box. */
export const touching = (box: Box, boxes: readonly Box[]): number[] =>
  boxes.flatMap((other, i) => (boxesOverlap(box, other) ? [i] : []));
