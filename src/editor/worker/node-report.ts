import { type MissingInput, type NodeResult, formatProblem } from '../../runtime/index.ts';
import { type Carried, type Check, type Picture, describeValue, thumbnailOf, worstStatus } from '../../values/index.ts';
import type { Desk } from './desk.ts';
import { type NodeReport, THUMBNAIL_DOTS } from './protocol.ts';

const BLANK: Picture = { layers: [], lines: [] };

export interface Reporter {
  /** The report of a node's last result; undefined when it has none. */
  readonly report: (node: string) => NodeReport | undefined;
}

/** Makes reports; a node whose values stayed the same keeps its thumbnail. */
export function makeReporter(desk: Desk): Reporter {
  const thumbnails = new Map<string, { readonly values: readonly Carried[]; readonly picture: Picture }>();
  const thumbnail = (node: string, values: readonly Carried[]) => {
    const known = thumbnails.get(node);
    if (known !== undefined && sameValues(known.values, values)) return known.picture;
    const picture = thumbnailOf(values, THUMBNAIL_DOTS);
    for (const id of thumbnails.keys()) if (desk.node(id) === undefined) thumbnails.delete(id);
    thumbnails.set(node, { values, picture });
    return picture;
  };
  return {
    report(node) {
      const result = desk.result(node);
      if (result === undefined) return undefined;
      const outputs = desk.outputs(node);
      return reportOf(desk, result, outputs, result.state === 'ready' ? thumbnail(node, outputs) : BLANK);
    },
  };
}

/** Whether two lists carry the very same values. */
export function sameValues(a: readonly Carried[], b: readonly Carried[]): boolean {
  return a.length === b.length && a.every(({ port, type, value }, i) => b[i]!.port === port && b[i]!.type === type && Object.is(b[i]!.value, value));
}

function reportOf(desk: Desk, result: NodeResult, outputs: readonly Carried[], thumbnail: Picture): NodeReport {
  const checks = outputs.filter(({ type }) => type === 'checks').flatMap(({ value }) => value as readonly Check[]);
  return {
    state: result.state, says: saying(desk, result, outputs), thumbnail, milliseconds: result.milliseconds,
    problems: result.state === 'failed' ? result.problems : [],
    cautions: result.state === 'ready' ? result.cautions : [],
    missing: result.state === 'blocked' ? result.missing : [],
    ...(outputs.some(({ type }) => type === 'checks') && { worst: worstStatus(checks) }),
  };
}

function saying(desk: Desk, result: NodeResult, outputs: readonly Carried[]): string {
  switch (result.state) {
    case 'ready': return outputs.map(({ type, value }) => describeValue(type, value as never)).join('; ') || 'done';
    case 'failed': return formatProblem(result.problems[0]);
    case 'blocked': return result.missing.map((missing) => waiting(desk, missing)).join('; ');
  }
}

function waiting(desk: Desk, { port, from }: MissingInput): string {
  const source = desk.node(from);
  return `waits for ${port} from ${source?.title ?? desk.catalogue.get(source?.type ?? '')?.title ?? from}`;
}
