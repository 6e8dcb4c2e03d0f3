import { deepEqual } from './deep-equal.ts';
import type { ComputedResult } from './evaluation.ts';
import type { AnyParamValues } from './params.ts';

/**
 * How many memos a node keeps: that of its present inputs and the one before, so that setting a parameter back (or
 * undoing and redoing one edit) executes nothing. More would hold more of the large values that nodes make.
 */
const MEMOS_PER_NODE = 2;

/** A value of an output, and the revision in which it last became a different one. */
export interface Versioned {
  readonly value: unknown;
  readonly changedAt: number;
}

export type Versions = Readonly<Record<string, Versioned>>;

/** What a node was asked for: everything its result depends on. */
export interface Request {
  readonly type: string;
  readonly params: AnyParamValues;
  /** Names the wired outputs of each input with their changedAt: equal text means equal values. */
  readonly inputs: string;
}

/** The result of a request, and the last revision in which it was known to hold. */
export interface Memo {
  readonly request: Request;
  readonly result: ComputedResult;
  /** The outputs with their changedAt; empty when the node failed. */
  readonly versions: Versions;
  verifiedAt: number;
}

export interface MemoTable {
  /** The memo of this very request, marked as verified in this revision. */
  readonly find: (node: string, request: Request, revision: number) => Memo | undefined;
  /** Memos the node has of earlier requests to the same type, latest verified first. */
  readonly earlier: (node: string, type: string) => readonly Memo[];
  /** Keeps a memo, and lets go of the one verified longest ago. */
  readonly keep: (node: string, memo: Memo) => void;
  /** Lets go of every node that is not in the graph any more. */
  readonly retain: (nodes: ReadonlySet<string>) => void;
}

export function createMemoTable(): MemoTable {
  const memos = new Map<string, readonly Memo[]>();
  const of = (node: string) => memos.get(node) ?? [];
  return {
    find(node, request, revision) {
      const memo = of(node).find((candidate) => sameRequest(candidate.request, request));
      if (memo !== undefined) memo.verifiedAt = revision;
      return memo;
    },
    earlier: (node, type) => latestFirst(of(node).filter(({ request }) => request.type === type)),
    keep: (node, memo) => void memos.set(node, latestFirst([memo, ...of(node)]).slice(0, MEMOS_PER_NODE)),
    retain(nodes) {
      for (const node of memos.keys()) if (!nodes.has(node)) memos.delete(node);
    },
  };
}

/**
 * Gives each output its changedAt. An output equal to that of an earlier memo is backdated: it takes the earlier value and
 * changedAt, so that whatever depends on it finds its request unchanged. Others changed in this revision.
 */
export function backdate(
  outputs: Readonly<Record<string, unknown>>, earlier: readonly Memo[], revision: number,
  equal: (port: string, a: unknown, b: unknown) => boolean,
): Versions {
  return Object.fromEntries(Object.entries(outputs).map(([port, value]) => {
    const same = earlier.map(({ versions }) => versions[port]).find((old) => old !== undefined && equal(port, old.value, value));
    return [port, same ?? { value, changedAt: revision }];
  }));
}

function sameRequest(a: Request, b: Request): boolean {
  return a.type === b.type && a.inputs === b.inputs && deepEqual(a.params, b.params);
}

function latestFirst(memos: readonly Memo[]): readonly Memo[] {
  return [...memos].sort((a, b) => b.verifiedAt - a.verifiedAt);
}
