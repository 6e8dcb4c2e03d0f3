import type { GraphDocument, Shapes } from '../../runtime/index.ts';
import { targetOf, titleOf } from '../model/graph.ts';

/** What is taken in hand or bought for a sign, by the type of the value that stands for it. */
const NEEDED: ReadonlySet<string> = new Set(['machine', 'stock', 'cutter', 'strip', 'tube']);

export interface Need {
  readonly node: string;
  readonly title: string;
}

/** The steps that say what the shop must have: those that give such a thing and take nothing in. */
export function needsOf({ nodes, wires }: GraphDocument, shapes: Shapes): readonly Need[] {
  const fed = new Set(wires.map(targetOf));
  return nodes
    .filter(({ id, type }) => !fed.has(id) && Object.values(shapes.get(type)?.outputs ?? {}).some((output) => NEEDED.has(output.type)))
    .map((node) => ({ node: node.id, title: titleOf(shapes, node) }));
}
