import { type Problem, formatProblem } from '../../runtime/index.ts';
import type { EditorState } from '../state/editor.ts';
import type { Picture } from '../../values/index.ts';
import type { NodeReport } from '../worker/protocol.ts';
import type { BenchCard } from './bench-graph.ts';

export type CardMood = 'unknown' | 'computing' | 'waiting' | 'failed' | 'blocked' | 'caution' | 'ready';

/** How a step is doing, told by a sign and a word, so that colour is never alone. */
export interface CardState {
  readonly mood: CardMood;
  readonly sign: string;
  readonly word: string;
}

/** A card's progress from 0 to 1 while it is at work; undefined otherwise. A group is at work while one of its members is. */
export function progressOf({ running }: EditorState, members: readonly string[]): number | undefined {
  return running.state === 'computing' && running.node !== undefined && members.includes(running.node) ? running.done : undefined;
}

export function stateOf(card: Pick<BenchCard, 'known' | 'kind'>, report: NodeReport | undefined, computing: boolean): CardState {
  if (!card.known) return { mood: 'unknown', sign: '?', word: 'unknown step' };
  if (computing) return { mood: 'computing', sign: '…', word: 'computing' };
  if (report === undefined) return { mood: 'waiting', sign: '…', word: 'not computed yet' };
  if (report.state === 'failed') return { mood: 'failed', sign: '✕', word: 'failed' };
  if (report.state === 'blocked') return { mood: 'blocked', sign: '–', word: 'waiting' };
  if (report.worst === 'fail') return { mood: 'failed', sign: '✕', word: 'check failed' };
  return cautious(report);
}

function cautious({ cautions, worst }: NodeReport): CardState {
  const count = cautions.length;
  if (count === 0 && worst !== 'caution') return { mood: 'ready', sign: '', word: '' };
  return { mood: 'caution', sign: '!', word: count <= 1 ? 'caution' : `${count} cautions` };
}

/** The problem as a sentence a person reads: what to do comes last. */
export function sentenceOf(problem: Problem): string {
  const text = formatProblem(problem);
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What came out, or what is in the way. */
export function saysOf(card: Pick<BenchCard, 'known' | 'type'>, report: NodeReport | undefined): string {
  if (!card.known) return `No step of the type “${card.type}” is known here. Its values and wires are kept.`;
  const problem = report?.state === 'failed' ? report.problems[0] : undefined;
  return problem === undefined ? report?.says ?? '' : sentenceOf(problem);
}

/** The report a card shows: a node's own; of a group that of a member in trouble, else of the last that drew something. */
export function shownReport({ kind, members }: Pick<BenchCard, 'kind' | 'members'>, reports: EditorState['reports']): NodeReport | undefined {
  const found = members.flatMap((id) => reports.get(id) ?? []);
  if (kind === 'node') return found[0];
  return found.find(({ state }) => state === 'failed') ?? lastDrawn(found) ?? found.at(-1);
}

/** The picture a card shows: a node's own, of a group the last that was drawn. */
export function shownPicture({ members }: Pick<BenchCard, 'members'>, reports: EditorState['reports']): Picture | undefined {
  const ready = members.flatMap((id) => reports.get(id) ?? []).filter(({ state }) => state === 'ready');
  return (lastDrawn(ready) ?? ready.at(-1))?.thumbnail;
}

const lastDrawn = (reports: readonly NodeReport[]): NodeReport | undefined => reports.findLast(({ thumbnail }) => thumbnail.box !== undefined);
