import { type Point, distance } from '../../geometry/index.ts';

/**
 * One finding for each place: findings no farther apart than `within` mm, or linked by others that are not, are one place,
 * and the first of them stands for it. So a wall between two parallel grooves is one place, seen from either side.
 */
export function onePerPlace<Finding extends { readonly at: Point }>(findings: readonly Finding[], within: number): Finding[] {
  const cells = new Map<string, Finding[]>();
  const nameOf = (p: Point, right = 0, up = 0) => `${Math.floor(p.x / within) + right} ${Math.floor(p.y / within) + up}`;
  for (const finding of findings) {
    const name = nameOf(finding.at);
    const cell = cells.get(name);
    if (cell) cell.push(finding);
    else cells.set(name, [finding]);
  }
  const isLeft = new Set(findings);
  const takeNear = ({ at }: Finding): Finding[] => AROUND
    .flatMap(([right, up]) => cells.get(nameOf(at, right, up)) ?? [])
    .filter((other) => isLeft.has(other) && distance(other.at, at) <= within && isLeft.delete(other));
  return findings.filter((finding) => {
    if (!isLeft.delete(finding)) return false;
    const linked = [finding];
    for (let next = linked.pop(); next !== undefined; next = linked.pop()) linked.push(...takeNear(next));
    return true;
  });
}

/** A cell and its eight neighbours. */
const AROUND = [-1, 0, 1].flatMap((right) => [-1, 0, 1].map((up) => [right, up] as const));
