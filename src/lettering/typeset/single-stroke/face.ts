import { applyToPath, type Point, polylinePath, scaling } from '../../../geometry/index.ts';
import type { Cluster, SetLine } from '../cluster.ts';
import hershey from './hershey.json' with { type: 'json' };

/** Edges left and right, and strokes as x and y by turns: whole numbers, y downward. */
type HersheyGlyph = readonly [left: number, right: number, ...strokes: readonly (readonly number[])[]];

/** Lettering that a pen writes: see the acknowledgements in the file of its data, which go with it. */
const FACES = hershey.faces as unknown as Readonly<Record<SingleStrokeName, { readonly characters: string; readonly glyphs: readonly HersheyGlyph[] }>>;

export const SINGLE_STROKE_NAMES = ['Roman simplex', 'Script simplex', 'Greek simplex'] as const;
export type SingleStrokeName = (typeof SINGLE_STROKE_NAMES)[number];

const BASELINE = 9;
/** Height of capitals, of the grid's units. */
export const GRID_CAPITALS = 21;

/** A character's edges and strokes in units of the grid, y up from the baseline, x from its left edge; undefined when the face has it not. */
export function gridGlyph(name: SingleStrokeName, character: string): { readonly advance: number; readonly strokes: readonly (readonly Point[])[] } | undefined {
  const { characters, glyphs } = FACES[name];
  const glyph = character.length === 1 ? glyphs[characters.indexOf(character)] : undefined;
  if (!glyph) return undefined;
  const [left, right, ...strokes] = glyph;
  const pointsOf = (xy: readonly number[]) => Array.from({ length: xy.length / 2 }, (_, i): Point => ({ x: xy[2 * i]! - left, y: BASELINE - xy[2 * i + 1]! }));
  return { advance: right - left, strokes: strokes.map(pointsOf) };
}

/** A line in a face, capitals of this height, mm; letters the face has not stand for nothing. */
export function setSingleStrokes(letters: readonly string[], name: SingleStrokeName, capHeight: number): SetLine {
  const unit = capHeight / GRID_CAPITALS;
  const clusters = letters.flatMap((text, i): Cluster[] => {
    const glyph = gridGlyph(name, text === '\u00a0' ? ' ' : text);
    if (!glyph) return [];
    const paths = glyph.strokes.map((points) => applyToPath(scaling(unit), polylinePath(points, false)));
    return [{ text, letter: i + 1, advance: glyph.advance * unit, drawn: paths.length === 0 ? [] : [{ paths, at: { x: 0, y: 0 } }] }];
  });
  return { clusters };
}
