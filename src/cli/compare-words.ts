import type { Change } from '../runtime/index.ts';
import { amount, type FigureChange } from '../values/index.ts';
import { oneLine } from './fault.ts';
import { table } from './layout.ts';

/** Longer values are cut short: files and long texts are told apart, not printed. */
const LONGEST = 60;

/** One line for each thing that a graph has otherwise. */
export function changeLines(changes: readonly Change[]): string[] {
  return changes.map(({ kind, place, from, to }) => `  ${oneLine(`${KINDS[kind]}${place}: ${said(from, to)}`)}`);
}

const KINDS: Readonly<Record<Change['kind'], string>> = {
  title: '', notes: '', node: 'node ', type: 'kind of ', name: 'title of ', note: 'note of ', value: '', wire: 'wire ', input: 'input ', group: 'group ', order: 'order of ',
};

function said(from: unknown, to: unknown): string {
  if (from === undefined) return `new${to === undefined || typeof to === 'object' ? '' : `, ${short(to)}`}`;
  return to === undefined ? 'gone' : `${short(from)} -> ${short(to)}`;
}

function short(value: unknown): string {
  const file = typeof value === 'object' && value !== null && 'name' in value && ('text' in value || 'base64' in value) ? value as { name: string } : undefined;
  const text = file ? `file ${file.name}` : JSON.stringify(value);
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1)}…`;
}

/** Figures side by side, and by how much they changed; what would be printed alike is left out. */
export function figureLines(changes: readonly FigureChange[]): string[] {
  const rows = changes.map((change) => [change.name, cell(change, 'from'), cell(change, 'to'), by(change)].map(oneLine));
  return table(rows.filter(([, from, to]) => from !== to), { right: [1, 2, 3] });
}

function cell({ unit, judged, ...figures }: FigureChange, side: 'from' | 'to'): string {
  const value = figures[side];
  const status = judged?.[side === 'from' ? 0 : 1];
  const text = value === undefined ? '-' : typeof value === 'string' ? value : amount(value, unit);
  return status === undefined || status === 'pass' ? text : `${text} (${status})`;
}

function by({ from, to, unit }: FigureChange): string {
  if (typeof from !== 'number' || typeof to !== 'number' || from === to) return '';
  return `${to > from ? '+' : ''}${amount(to - from, unit)}`;
}
