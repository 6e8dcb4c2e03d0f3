import type { Stroke } from '../../../artwork/artwork.ts';
import { applyToPath, multiply, pathSegmentsWithStarts, translation } from '../../../geometry/index.ts';
import { makeBaseline } from '../baseline.ts';
import { isSpace } from '../cluster.ts';
import { layOut, lineWidth, type PlacedCluster } from '../layout.ts';
import type { Laid, LayoutOptions } from '../options.ts';
import { joinsApart, namesOf, noLetters, readPhrase, standsOut } from '../phrase.ts';
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
  const { size, shape, alignment, letterSpacing, wordSpacing, lineSpacing } = options;
  const spacing = { letters: letterSpacing * size, words: wordSpacing * size };
  const setting = { alignment, leading: lineSpacing * size, capHeight: size };
  const lines = texts.map((letters) => setSingleStrokes(letters, name, size));
  const baseline = makeBaseline(shape, setting);
  const widths = lines.map((line) => lineWidth(line, spacing));
  const refused = baseline.refuse(widths);
  if (refused) return { ok: false, problems: refused };
  const placed = layOut(lines, spacing, baseline);
  const joined = joinLines(penLines(placed), REACH * size);
  const plain = joinLines(penLines(layOut(lines, { letters: 0, words: 0 }, makeBaseline({ kind: 'straight' }, setting))), REACH * size);
  const draw = options.rounded ? roundLines : straightLines;
  return {
    ok: true,
    written: {
      strokes: joined.lines.map(({ points, source }) => ({ path: draw(points, REACH * size), source })),
      letters: placed.filter(({ cluster }) => !isSpace(cluster)).length, lines: lines.length,
      cautions: [...phrase.cautions, ...standsOut(widths.map(baseline.beyond)), ...joinsApart({ joins: plain.acrossLetters, lost: plain.acrossLetters - joined.acrossLetters }, options)],
    },
  };
}

function penLines(placed: readonly PlacedCluster[]): PenLine[] {
  return placed.flatMap(({ cluster, line, transform }, letter) => cluster.drawn.flatMap(({ paths, at }) => paths.map((path): PenLine => {
    const moved = applyToPath(multiply(transform, translation(at.x, at.y)), path);
    return { points: [moved.start, ...pathSegmentsWithStarts(moved).map(({ segment }) => segment.end)], letter, source: `“${cluster.text}”, letter ${cluster.letter} of line ${line + 1}` };
  })));
}
