import { LIMITS, type GraphDocument } from '../../runtime/index.ts';

/** Every id a node or a group has: cards of both lie side by side, so one never takes the other's. */
export const idsOf = ({ nodes, groups }: Pick<GraphDocument, 'nodes' | 'groups'>): Set<string> => new Set([...nodes, ...groups].map(({ id }) => id));

/** `wanted`, or with a number after it that makes it no one else's: `groove`, `groove-2`. Counts on from a number it has. */
export function freshId(taken: ReadonlySet<string>, wanted: string): string {
  if (!taken.has(wanted)) return wanted;
  const [, stem = wanted, number = '1'] = /^(.*?)-([1-9][0-9]{0,5})$/.exec(wanted) ?? [];
  for (let count = Number(number) + 1; ; count++) {
    const id = withNumber(stem, count);
    if (!taken.has(id)) return id;
  }
}

function withNumber(stem: string, count: number): string {
  const tail = `-${count}`;
  return `${stem.slice(0, LIMITS.nameLength - tail.length).replace(/-+$/, '')}${tail}`;
}
