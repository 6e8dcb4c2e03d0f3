import { deepEqual } from '../../runtime/index.ts';
import type { Desk } from './desk.ts';
import type { Painter } from './node-picture.ts';
import type { Reporter } from './node-report.ts';
import type { FromWorker, NodePicture, NodeReport } from './protocol.ts';

/** Tells the page what it does not know yet. */
export interface Teller {
  /** Tells a node's report unless the page knows it. */
  readonly report: (revision: number, node: string) => void;
  /** Whether the page knows the report of a node's last result. */
  readonly isKnown: (node: string) => boolean;
  /** Tells a node's picture unless it is the one told last. */
  readonly picture: (revision: number, node: string) => void;
  /** Makes a function that tells how far the nodes of an evaluation are. */
  readonly progress: (revision: number) => (node: string, done: number) => void;
  /** The page forgot everything. */
  readonly forget: () => void;
  /** Nodes that are gone need not be remembered. */
  readonly tidy: () => void;
}

/** Progress within a node is told at most this often, milliseconds. */
const PROGRESS_EVERY = 50;

interface Sources {
  readonly desk: Desk;
  readonly reporter: Reporter;
  readonly painter: Painter;
}

export function makeTeller({ desk, reporter, painter }: Sources, post: (message: FromWorker) => void, now: () => number): Teller {
  const told = new Map<string, { readonly result: unknown; readonly report: NodeReport }>();
  let toldPicture: NodePicture | undefined;
  const isKnown = (node: string) => told.get(node)?.result === desk.result(node);
  return {
    isKnown,
    report(revision, node) {
      const [result, known] = [desk.result(node), told.get(node)];
      const report = result === undefined || isKnown(node) ? undefined : reporter.report(node);
      if (report === undefined) return;
      told.set(node, { result, report });
      // What failed or waits has a fresh result each time, though it says the same.
      if (known === undefined || result?.state === 'ready' || !deepEqual(known.report, report)) post({ kind: 'report', revision, node, report });
    },
    picture(revision, node) {
      const picture = painter.picture(node);
      if (picture === undefined || picture === toldPicture) return;
      toldPicture = picture;
      post({ kind: 'picture', revision, picture });
    },
    progress: (revision) => progressTeller(revision, post, now),
    forget() {
      told.clear();
      toldPicture = undefined;
    },
    tidy() {
      for (const id of told.keys()) if (desk.node(id) === undefined) told.delete(id);
    },
  };
}

function progressTeller(revision: number, post: (message: FromWorker) => void, now: () => number): (node: string, done: number) => void {
  let toldAt = -Infinity;
  return (node, done) => {
    const time = now();
    if (done > 0 && time - toldAt < PROGRESS_EVERY) return;
    toldAt = time;
    post({ kind: 'progress', revision, node, done });
  };
}
