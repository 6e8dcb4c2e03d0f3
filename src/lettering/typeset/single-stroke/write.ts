import type { Stroke } from '../../../artwork/artwork.ts';
import { pathSegmentsWithStarts } from '../../../geometry/index.ts';
import { layOutLines, type PlacedCluster, sourceOf, standing } from '../layout.ts';
import type { Laid, LayoutOptions } from '../options.ts';
import { joinsApart, namesOf, noLetters, readPhrase } from '../phrase.ts';
import type { TypeProblems } from '../problem.ts';
import { lettersOf } from '../runs.ts';
import { gridGlyph, GRID_CAPITALS, setSingleStrokes, type SingleStrokeName } from './face.ts';
import { joinLines, type PenLine } from './pen.ts';
import { roundLines, straightLines } from './round.ts';

export interface SingleStroke extends Laid {
  /** In the order a pen writes them. */
  readonly strokes: readonly Stroke[];
}

export interface WritingOptions extends LayoutOptions {
  /** Whether lines through points become curves where they are no corners. */
  readonly rounded: boolean;
}

type Writing = { readonly ok: true; readonly written: SingleStroke } | { readonly ok: false; readonly problems: TypeProblems };

/** Lines meet where they are no farther apart than this, in heights of a capital: less than a unit of the grid. */
const REACH = 0.6 / GRID_CAPITALS;

/** Writes a phrase with single strokes, which need no tracing. */
export function writePhrase(text: string, name: SingleStrokeName, options: WritingOptions): Writing {
  const phrase = readPhrase(text);
  if (phrase.lines.length === 0) return { ok: false, problems: [noLetters(text)] };
  const texts = phrase.lines.map((line) => lettersOf(line).map((letter) => letter.text));
  const missing = [...new Set(texts.flat().filter((letter) => letter !== '\u00a0' && !gridGlyph(name, letter)))];
  if (missing.length > 0) return { ok: false, problems: [{ place: 'phrase', expected: `characters that ${name} has`, found: `${namesOf(missing)}, which it has not`, advice: 'Write it otherwise, or typeset and trace it.' }] };
  const { size } = options;
  const layout = layOutLines(texts.map((letters) => setSingleStrokes(letters, name, size)), options);
  if (!layout.ok) return layout;
  const { placed, plain, letters, lines, cautions } = layout.laid;
  const [joined, byThemselves] = [placed, plain()].map((clusters) => joinLines(penLines(clusters), REACH * size)) as [Joined, Joined];
  const draw = options.rounded ? roundLines : straightLines;
  const apart = joinsApart({ joins: byThemselves.acrossLetters, lost: byThemselves.acrossLetters - joined.acrossLetters }, options);
  const strokes = joined.lines.map(({ points, source }) => ({ path: draw(points, REACH * size), source }));
  return { ok: true, written: { strokes, letters, lines, cautions: [...phrase.cautions, ...cautions, ...apart] } };
}

type Joined = ReturnType<typeof joinLines>;

function penLines(placed: readonly PlacedCluster[]): PenLine[] {
  return placed.flatMap((one, letter) => standing(one).flat().map((path): PenLine =>
    ({ points: [path.start, ...pathSegmentsWithStarts(path).map(({ segment }) => segment.end)], letter, source: sourceOf(one) })));
}
