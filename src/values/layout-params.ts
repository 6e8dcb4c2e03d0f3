import type { Stroke } from '../artwork/artwork.ts';
import { arrangementBox } from '../artwork/index.ts';
import type { BaselineShape, LayoutOptions } from '../lettering/index.ts';
import type { Params, ParamValues } from '../runtime/params.ts';
import type { Problem } from '../runtime/problem.ts';
import type { Quantities } from './check.ts';

/** How a phrase is laid out: the parameters that all nodes have which set one. */
export const LAYOUT_PARAMS = {
  size: { kind: 'number', unit: 'mm', default: 100, min: 1, max: 5000, step: 5, label: 'Capital height', doc: 'Height of a capital letter above the baseline, by what the typeface says of itself. A node that fits the lettering to a width changes it.' },
  letterSpacing: { kind: 'number', unit: 'ratio', default: 0, min: -0.5, max: 5, step: 0.02, label: 'Letter spacing', doc: 'Room added between letters, in capital heights. With any but 0 the letters of joined scripts come apart, and ligatures are not made.' },
  wordSpacing: { kind: 'number', unit: 'ratio', default: 0, min: -1, max: 10, step: 0.05, label: 'Word spacing', doc: 'Room added at every space, in capital heights.' },
  lineSpacing: { kind: 'number', unit: 'ratio', default: 2, min: 0.2, max: 20, step: 0.1, label: 'Line spacing', doc: 'From one baseline to the next, in capital heights.' },
  alignment: { kind: 'choice', options: ['left', 'centre', 'right'], default: 'centre', label: 'Alignment', doc: 'Where lines of different widths agree. On an arc, also which part of the text stands at its top; on a path, which of its parts the text stands on.' },
  standsOn: { kind: 'choice', options: ['straight line', 'arc', 'drawn stroke'], default: 'straight line', label: 'Stands on', doc: 'What the letters stand on: a straight line, an arc, or the first stroke that is wired to “baseline”.' },
  radius: { kind: 'number', unit: 'mm', default: 1000, min: -100000, max: 100000, step: 10, label: 'Arc radius', doc: 'Radius of the first line\'s arc. Above 0 the letters stand on top of the circle, below 0 in its bowl.' },
  offset: { kind: 'number', unit: 'mm', default: 0, min: -100000, max: 100000, step: 5, label: 'Offset', doc: 'How far the text moves on along the drawn stroke.' },
} as const satisfies Params;

/** Which way lines run, for what is written in either direction. */
export const DIRECTION_PARAM = {
  direction: { kind: 'choice', options: ['automatic', 'left to right', 'right to left'], default: 'automatic', label: 'Direction', doc: 'Which way a line runs. Automatic: as its first letter does.' },
} as const satisfies Params;

type LayoutValues = ParamValues<typeof LAYOUT_PARAMS & typeof DIRECTION_PARAM>;

type LaidOptions = { readonly ok: true; readonly options: LayoutOptions } | { readonly ok: false; readonly problems: readonly [Problem] };

/** What the parameters ask for; a problem where the baseline is to be drawn and is not there. */
export function layoutOptions(values: LayoutValues, strokes: readonly Stroke[] | undefined): LaidOptions {
  const { standsOn, radius, offset, ...others } = values;
  const drawn = strokes?.[0];
  if (standsOn === 'drawn stroke' && !drawn) return { ok: false, problems: [{ place: 'baseline', expected: 'a stroke to stand on', found: 'none', advice: 'Wire strokes to “baseline”, or choose a straight line or an arc.' }] };
  const shapes: Record<typeof standsOn, () => BaselineShape> = {
    'straight line': () => ({ kind: 'straight' }), arc: () => ({ kind: 'arc', radius }), 'drawn stroke': () => ({ kind: 'path', path: drawn!.path, offset }),
  };
  return { ok: true, options: { ...others, shape: shapes[standsOn]() } };
}

/** What lettering measures, and how much of it there is. */
export function letteringQuantities(lettering: Parameters<typeof arrangementBox>[0], { letters, lines }: { readonly letters: number; readonly lines: number }): Quantities {
  const box = arrangementBox(lettering);
  return {
    letteringWidth: { value: box ? box.maxX - box.minX : 0, unit: 'mm' }, letteringHeight: { value: box ? box.maxY - box.minY : 0, unit: 'mm' },
    letters: { value: letters, unit: 'count' }, lines: { value: lines, unit: 'count' },
  };
}
