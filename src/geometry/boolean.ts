import { overlapGroups, touching } from './groups.ts';
import { attempt, type BooleanOperation, execute, type FillRuleName, fromUnits, toUnits, type UnitLoop } from './kernel.ts';
import { components, emptyRegion, type Loop, loopsBounds, type Region } from './region.ts';

const unitsOf = (regions: readonly Region[]): UnitLoop[] => regions.flatMap(({ loops }) => loops.map(toUnits));

const asRegion = (loops: readonly UnitLoop[]): Region => ({ loops: loops.map(fromUnits) });

const gathered = (regions: readonly Region[]): Region => ({ loops: regions.flatMap(({ loops }) => loops) });

const boundsOf = (parts: readonly Region[]) => parts.map(({ loops }) => loopsBounds(loops)!);

/**
 * The area that loops in any order and orientation enclose under a fill rule, as a region, or undefined when their
 * crossings are too many and too close for the kernel to sort out at once.
 */
export function attemptRegion(loops: readonly Loop[], rule: FillRuleName): Region | undefined {
  const cleaned = loops.map(toUnits).filter((loop) => loop.length > 2);
  const done: UnitLoop[] = [];
  for (const group of overlapGroups(cleaned.map((loop) => loopsBounds([loop])!))) {
    const result = attempt({ operation: 'union', rule, subject: group.map((i) => cleaned[i]!) });
    if (result === undefined) return undefined;
    for (const loop of result) done.push(loop);
  }
  return asRegion(done);
}

/**
 * The area that loops in any order and orientation enclose under a fill rule, as a region: loops may cross themselves
 * and each other. Throws, as all region operations do, a RangeError for a coordinate that is not finite or beyond the limit,
 * and an Error in the rare case that the kernel gives up.
 */
export function regionFromLoops(loops: readonly Loop[], rule: FillRuleName): Region {
  const region = attemptRegion(loops, rule);
  if (region === undefined) throw new Error('the boolean kernel gave up: expected fewer near-coincident crossings');
  return region;
}

/** More members than this are joined half by half, because the kernel slows down and tires with all of them at once. */
const MEMBERS_AT_ONCE = 8;

/** The union of regions. Parts whose boxes are clear of all others pass unchanged; the rest is joined group by group. */
export function unionRegions(regions: readonly Region[]): Region {
  const parts = regions.flatMap(components);
  const boxes = boundsOf(parts);
  return gathered(overlapGroups(boxes).map((group) => {
    if (group.length <= MEMBERS_AT_ONCE) return joined(group.map((i) => parts[i]!));
    const sorted = sortedAlong(group, (i) => boxes[i]!);
    const middle = sorted.length >> 1;
    const half = (members: readonly number[]): Region => unionRegions(members.map((i) => parts[i]!));
    return joinedHalves(half(sorted.slice(0, middle)), half(sorted.slice(middle)));
  }));
}

function joined(parts: readonly Region[]): Region {
  return parts.length === 1 ? parts[0]! : asRegion(execute({ operation: 'union', rule: 'positive', subject: unitsOf(parts) }));
}

function joinedHalves(a: Region, b: Region): Region {
  const parts = [...components(a), ...components(b)];
  return gathered(overlapGroups(boundsOf(parts)).map((group) => joined(group.map((i) => parts[i]!))));
}

/** Members by the middle of their boxes, along the direction in which these middles are spread wider. */
function sortedAlong(members: readonly number[], boxOf: (i: number) => { minX: number; maxX: number; minY: number; maxY: number }): number[] {
  const x = (i: number): number => boxOf(i).minX + boxOf(i).maxX;
  const y = (i: number): number => boxOf(i).minY + boxOf(i).maxY;
  const spread = (of: (i: number) => number): number => {
    const values = members.map(of);
    return values.reduce((a, b) => Math.max(a, b)) - values.reduce((a, b) => Math.min(a, b));
  };
  const key = spread(x) >= spread(y) ? x : y;
  return [...members].sort((a, b) => key(a) - key(b));
}

/** Each component of `a` combined with those components of `b` that come near it. */
function combined(operation: BooleanOperation, a: Region, b: Region, alone: (part: Region) => Region): Region {
  const others = components(b);
  const boxes = boundsOf(others);
  return gathered(components(a).map((part) => {
    const near = touching(loopsBounds(part.loops)!, boxes).map((i) => others[i]!);
    return near.length === 0 ? alone(part)
      : asRegion(execute({ operation, rule: 'positive', subject: unitsOf([part]), clip: unitsOf(near) }));
  }));
}

/** What of region `a` is not in region `b`. */
export const subtractRegion = (a: Region, b: Region): Region => combined('subtract', a, b, (part) => part);

/** What regions `a` and `b` share. */
export const intersectRegions = (a: Region, b: Region): Region => combined('intersect', a, b, () => emptyRegion);
