import { type GraphDocument, type GraphProblem, type Problem, type Shapes } from '../../runtime/index.ts';
import { amount } from '../../values/check.ts';
import { titleAt } from '../model/graph.ts';
import type { EditorState } from '../state/editor.ts';
import type { NodeReport, PlacedCheck } from '../worker/protocol.ts';

/** One thing to look at, or to know that it is in order. */
export interface Finding {
  readonly key: string;
  /** `waiting`: a step that cannot compute because another one did not. */
  readonly status: 'fail' | 'waiting' | 'caution' | 'pass';
  /** What it is about: "Tightest bend". */
  readonly subject: string;
  /** Value, limit, what to do. */
  readonly says: string;
  /** The node it came from, and what its card is headed with. */
  readonly node?: string;
  readonly title?: string;
  /** A place on the sheet, mm. */
  readonly at?: readonly [number, number];
}

export type Looked = Pick<EditorState, 'shapes' | 'reports' | 'outcome'> & { readonly document: GraphDocument; readonly damage: readonly GraphProblem[] };

/** A damaged file may hold more faults than anybody reads. */
const MOST_DAMAGE = 100;
const ORDER: readonly Finding['status'][] = ['fail', 'waiting', 'caution', 'pass'];

/** Everything there is to tell about a document, what matters most first, otherwise in the order of the graph. */
export function findingsOf(looked: Looked): readonly Finding[] {
  const all = [...damageFindings(looked), ...looked.document.nodes.flatMap(({ id }) => nodeFindings(looked, id)), ...checkFindings(looked)];
  return ORDER.flatMap((status) => all.filter((finding) => finding.status === status));
}

function damageFindings({ damage, document, shapes }: Looked): Finding[] {
  const told = damage.slice(0, MOST_DAMAGE).map((problem, at): Finding => ({
    key: `damage ${String(at)}`, status: 'fail', subject: 'Damage in the file', says: problemText(problem), ...placeOf(shapes, document, problem.node),
  }));
  const more = damage.length - told.length;
  return more > 0 ? [...told, { key: 'damage more', status: 'fail', subject: 'Damage in the file', says: `${String(more)} more faults of the same file are not listed. Mend those above first.` }] : told;
}

function nodeFindings({ reports, document, shapes }: Looked, id: string): Finding[] {
  const report = reports.get(id);
  if (report === undefined) return [];
  const title = titleAt(shapes, document, id);
  const tell = (status: Finding['status'], subject: string) => (problem: Problem, at: number): Finding =>
    ({ key: `${id} ${status} ${String(at)}`, status, subject, says: problemText(problem), node: id, title });
  return [
    ...report.problems.map(tell('fail', `${title} cannot be computed`)),
    ...(report.state === 'blocked' ? [waiting(document, shapes, id, report)] : []),
    ...report.cautions.map(tell('caution', title)),
  ];
}

function waiting(document: GraphDocument, shapes: Shapes, id: string, { missing }: NodeReport): Finding {
  const title = titleAt(shapes, document, id);
  const what = missing.map(({ port, from }) => `${port} from ${titleAt(shapes, document, from)}`).join(', ');
  return { key: `${id} waiting`, status: 'waiting', subject: `${title} waits`, says: `It has not got ${what === '' ? 'what it needs' : what}. Mend that step first.`, node: id, title };
}

/** Checks of steps that are gone are no longer told, even before the next evaluation. */
function checkFindings({ outcome, document, shapes }: Looked): Finding[] {
  const there = new Set(document.nodes.map(({ id }) => id));
  return (outcome?.checks ?? []).filter(({ node }) => there.has(node)).map((check, at): Finding => ({
    key: `check ${check.node} ${check.check} ${String(at)}`, status: check.status, ...partsOf(check), ...placeOf(shapes, document, check.node), ...(check.at && { at: check.at }),
  }));
}

/** The sentence of a check as what it is about and what it says; one that names no subject is told under the check's name. */
function partsOf({ says, check, value, limit, unit }: PlacedCheck): Pick<Finding, 'subject' | 'says'> {
  const at = says.indexOf(': ');
  if (at > 0 && at < 80) return { subject: says.slice(0, at), says: says.slice(at + 2) };
  return { subject: sentenceCase(check), says: `${says} ${amount(value, unit)}, limit ${amount(limit, unit)}.` };
}

const sentenceCase = (name: string): string => {
  const words = name.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
};

function placeOf(shapes: Shapes, document: GraphDocument, node: string | undefined): Pick<Finding, 'node' | 'title'> {
  return node === undefined || !document.nodes.some(({ id }) => id === node) ? {} : { node, title: titleAt(shapes, document, node) };
}

/** A problem in one line; where it is counts before what was expected there. */
function problemText({ place, expected, found, advice }: Problem): string {
  return `${place === undefined ? 'Expected' : `${place}: expected`} ${expected}, found ${found}. ${advice}`;
}

/** A place as it is read out: "at x 412.3, y 88 mm". */
export const placeText = ([x, y]: readonly [number, number]): string => `at x ${String(tenths(x))}, y ${String(tenths(y))} mm`;
const tenths = (value: number): number => Math.round(value * 10) / 10 + 0;

const WORDS: Readonly<Record<Finding['status'], (count: number) => string>> = {
  fail: (count) => `${String(count)} failed`,
  waiting: (count) => `${String(count)} waiting`,
  caution: (count) => `${String(count)} ${count === 1 ? 'caution' : 'cautions'}`,
  pass: (count) => `${String(count)} in order`,
};

/** "1 caution, 14 in order"; nothing for no findings. */
export function summaryOf(findings: readonly Finding[]): string {
  return ORDER.map((status) => [status, findings.filter((finding) => finding.status === status).length] as const)
    .flatMap(([status, count]) => (count > 0 ? [WORDS[status](count)] : [])).join(', ');
}

/** The gravest status among findings; undefined among none. */
export const worstOf = (findings: readonly Finding[]): Finding['status'] | undefined =>
  ORDER.find((status) => findings.some((finding) => finding.status === status));
