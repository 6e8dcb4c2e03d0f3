import { type PortType, splitReference } from '../../runtime/index.ts';
import type { Carried } from '../../values/index.ts';
import type { Desk } from './desk.ts';

/** The value of a type that reaches or leaves a node, or else the nearest one on the way up its wires. */
export function carriedAbove(desk: Desk, node: string, type: PortType): Carried | undefined {
  const seen = new Set([node]);
  for (const one of seen) {
    const carried = [...desk.inputs(one), ...desk.outputs(one)].find((each) => each.type === type);
    if (carried) return carried;
    for (const source of neighbours(desk, one, 'above')) seen.add(source);
  }
  return undefined;
}

/** A node and all that anything of it reaches, the nearest first. */
export function nodesBelow(desk: Desk, node: string): readonly string[] {
  const seen = new Set([node]);
  for (const one of seen) for (const next of neighbours(desk, one, 'below')) seen.add(next);
  return [...seen];
}

function neighbours(desk: Desk, node: string, way: 'above' | 'below'): string[] {
  return desk.document().wires.flatMap(({ from, to }) => {
    const [source, target] = [splitReference(from)?.node, splitReference(to)?.node];
    const [here, there] = way === 'above' ? [target, source] : [source, target];
    return here === node && there !== undefined ? [there] : [];
  });
}
