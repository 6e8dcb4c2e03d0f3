import { type ExposedInput, type GraphDocument, LIMITS, type NodeGroup, type Wire } from './document.ts';
import { isId, isMemberName, splitReference } from './names.ts';

/**
 * The document with names a view can rely on: ids are ids and unique among nodes and groups, inputs have names of their own,
 * no wire is there twice, no node in two groups. Wires, inputs and groups follow a renamed node; where two nodes had one id
 * they keep to the first. Whoever calls this has told these faults before.
 */
export function distinct(document: GraphDocument): GraphDocument {
  const taken: Taken = new Map();
  const renamed = new Map<string, string>();
  const nodes = document.nodes.map((node) => {
    const id = unused(node.id, IDS, taken);
    if (!renamed.has(node.id)) renamed.set(node.id, id);
    return id === node.id ? node : { ...node, id };
  });
  return {
    ...document, nodes,
    wires: distinctWires(document.wires, renamed),
    inputs: distinctInputs(document.inputs, renamed),
    groups: distinctGroups(document.groups, renamed, taken),
  };
}

function distinctWires(wires: readonly Wire[], renamed: ReadonlyMap<string, string>): Wire[] {
  const seen = new Set<string>();
  return wires.flatMap(({ from, to }) => {
    const wire = { from: follow(from, renamed), to: follow(to, renamed) };
    const key = JSON.stringify(wire);
    if (seen.has(key)) return [];
    seen.add(key);
    return [wire];
  });
}

function distinctInputs(inputs: readonly ExposedInput[], renamed: ReadonlyMap<string, string>): ExposedInput[] {
  const taken: Taken = new Map();
  return inputs.map((input) => ({ ...input, name: unused(input.name, MEMBERS, taken), sets: follow(input.sets, renamed) }));
}

function distinctGroups(groups: readonly NodeGroup[], renamed: ReadonlyMap<string, string>, taken: Taken): NodeGroup[] {
  const members = new Set<string>();
  return groups.map((group) => {
    const nodes = group.nodes.map((node) => renamed.get(node) ?? node).filter((node) => {
      const free = !members.has(node);
      members.add(node);
      return free;
    });
    return { ...group, id: unused(group.id, IDS, taken), nodes };
  });
}

/** A reference to a renamed node, with its new name. */
function follow(reference: string, renamed: ReadonlyMap<string, string>): string {
  const parts = splitReference(reference);
  const node = parts === undefined ? undefined : renamed.get(parts.node);
  return parts === undefined || node === undefined || node === parts.node ? reference : `${node}.${parts.name}`;
}

/** Names given out, each with the number the next one like it gets. */
type Taken = Map<string, number>;

/** How names of one kind are made legal and told apart. */
interface Naming {
  readonly isLegal: (name: string) => boolean;
  readonly legal: (name: string) => string;
  /** What stands between a name and its number. */
  readonly joint: string;
}

/** Room is left for a number. */
const LONGEST = LIMITS.nameLength - 8;

const IDS: Naming = { isLegal: isId, legal: idFrom, joint: '-' };
const MEMBERS: Naming = { isLegal: isMemberName, legal: memberFrom, joint: '' };

/** The name if it may be one and nobody has it, else the nearest that may, with a number behind it if need be. */
function unused(name: string, { isLegal, legal, joint }: Naming, taken: Taken): string {
  const base = isLegal(name) ? name : legal(name);
  const numbered = (count: number) => `${base.slice(0, LONGEST).replace(/-$/, '')}${joint}${count}`;
  let count = taken.get(base) ?? 1;
  let free = count === 1 ? base : numbered(count);
  while (taken.has(free)) free = numbered(count += 1);
  taken.set(base, count + 1);
  if (free !== base) taken.set(free, 2);
  return free;
}

function idFrom(text: string): string {
  const words = text.match(/[a-zA-Z0-9]+/g)?.join('-').replace(/^[^a-zA-Z]+/, '').slice(0, LONGEST).replace(/-$/, '') ?? '';
  return isId(words) ? words : 'step';
}

function memberFrom(text: string): string {
  const letters = text.replace(/[^a-zA-Z0-9]+/g, '').replace(/^[^a-zA-Z]+/, '').slice(0, LONGEST);
  const name = letters.slice(0, 1).toLowerCase() + letters.slice(1);
  return isMemberName(name) ? name : 'input';
}
