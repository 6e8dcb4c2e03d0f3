import { applyToPath, scaling } from '../../geometry/index.ts';
import type { Cluster, SetLine } from './cluster.ts';
import { type Direction, lettersOf, type Run, runsOf } from './runs.ts';
import type { ShapedGlyph } from './shaping/font.ts';
import type { Typeface } from './typeface.ts';

export interface SetOptions {
  /** Height of a capital, mm. */
  readonly capHeight: number;
  readonly direction: Direction;
  /** Off where letters are spaced. */
  readonly ligatures: boolean;
}

/** A line of text, in NFC, set in a typeface: glyphs chosen, joined and kerned as its rules say, sizes in mm. */
export function setLine(line: string, typeface: Typeface, options: SetOptions): SetLine {
  const letters = lettersOf(line).map(({ at }) => at);
  const scale = options.capHeight / capShare(typeface);
  const clusters = runsOf(line, typeface, options.direction).flatMap((run) => {
    const font = typeface.fonts[run.font]!;
    const factor = scale / font.unitsPerEm;
    const glyphs = font.shape(run.text, { rightToLeft: run.level % 2 === 1, script: run.script, ligatures: options.ligatures });
    return clustersOf(glyphs, run).map(({ text, at, members }): Cluster => ({
      text, letter: letters.filter((begins) => begins <= at).length,
      advance: members.reduce((sum, { advance }) => sum + advance, 0) * factor,
      drawn: drawnOf(members, (glyph) => font.outline(glyph), factor),
    }));
  });
  return { clusters };
}

/** What a font's capitals measure when it does not say so sensibly: seven tenths of the em is common practice. */
const USUAL_CAPITALS = 0.7;

/** Height of capitals in em. */
export function capShare({ fonts: [{ capHeight, unitsPerEm }] }: Typeface): number {
  const share = capHeight / unitsPerEm;
  return share > 0.2 && share < 1.5 ? share : USUAL_CAPITALS;
}

/** Glyphs of one cluster stand side by side, in whatever direction the run goes. */
function clustersOf(glyphs: readonly ShapedGlyph[], { text, start }: Run): { readonly text: string; readonly at: number; readonly members: readonly ShapedGlyph[] }[] {
  const begins = [...new Set(glyphs.map(({ cluster }) => cluster))].sort((a, b) => a - b);
  const groups: ShapedGlyph[][] = [];
  for (const glyph of glyphs) {
    if (groups.at(-1)?.[0]?.cluster === glyph.cluster) groups.at(-1)!.push(glyph);
    else groups.push([glyph]);
  }
  return groups.map((members) => {
    const from = members[0]!.cluster;
    return { text: text.slice(from, begins[begins.indexOf(from) + 1]), at: start + from, members };
  });
}

function drawnOf(glyphs: readonly ShapedGlyph[], outline: (glyph: number) => Cluster['drawn'][number]['paths'], factor: number): Cluster['drawn'] {
  let pen = 0;
  return glyphs.flatMap(({ glyph, advance, offset }) => {
    const at = { x: (pen + offset.x) * factor, y: offset.y * factor };
    pen += advance;
    const paths = outline(glyph).map((path) => applyToPath(scaling(factor), path));
    return paths.length === 0 ? [] : [{ paths, at }];
  });
}
