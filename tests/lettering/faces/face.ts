import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import * as shaper from 'harfbuzzjs';
import type { Outline } from '../../../src/artwork/artwork.ts';
import { type Path, type Point, type Segment, same } from '../../../src/geometry/index.ts';
import { unpackWoff } from './woff.ts';

/** Height of the em square of everything set here, mm: letters of a large sign. */
export const EM = 200;

/** A glyph where the text puts it. */
export interface SetGlyph {
  /** Number of the glyph in the font, and the place in the text that it stands for. */
  readonly glyph: number;
  readonly cluster: number;
  readonly outline: Outline;
}

export interface Face {
  readonly name: string;
  /** Glyphs of a line of text from the origin to the right, mm, y up; those without outlines (spaces) left out. */
  readonly set: (text: string) => SetGlyph[];
}

/** Opens a face from its package of web fonts. Shaping applies what the font asks for by default: ligatures, contextual alternates, kerning. */
export function openFace(name: string, weight = 400): Face {
  const file = createRequire(import.meta.url).resolve(`@fontsource/${name}/files/${name}-latin-${weight}-normal.woff`);
  const face = new shaper.Face(new shaper.Blob(unpackWoff(readFileSync(file))));
  const font = new shaper.Font(face);
  const scale = EM / face.upem;
  return { name, set: (text) => setLine(font, text, scale) };
}

function setLine(font: shaper.Font, text: string, scale: number): SetGlyph[] {
  const buffer = new shaper.Buffer();
  buffer.addText(text);
  buffer.guessSegmentProperties();
  shaper.shape(font, buffer);
  const positions = buffer.getGlyphPositions();
  let pen = { x: 0, y: 0 };
  return buffer.getGlyphInfos().flatMap(({ codepoint: glyph, cluster }, i) => {
    const { xAdvance, yAdvance, xOffset, yOffset } = positions[i]!;
    const at = { x: pen.x + xOffset, y: pen.y + yOffset };
    pen = { x: pen.x + xAdvance, y: pen.y + yAdvance };
    const place = (x: number, y: number): Point => ({ x: (at.x + x) * scale, y: (at.y + y) * scale });
    const paths = pathsOf(font.glyphToJson(glyph), place);
    return paths.length === 0 ? [] : [{ glyph, cluster, outline: { paths, fillRule: 'nonzero', source: text[cluster] ?? '' } as Outline }];
  });
}

function pathsOf(commands: readonly { readonly type: string; readonly values: readonly number[] }[], place: (x: number, y: number) => Point): Path[] {
  const paths: { start: Point; segments: Segment[] }[] = [];
  let last = place(0, 0);
  for (const { type, values } of commands) {
    const points = Array.from({ length: values.length / 2 }, (_, i) => place(values[2 * i]!, values[2 * i + 1]!));
    const end = points.at(-1);
    if (end === undefined) continue;
    if (type === 'M') paths.push({ start: end, segments: [] });
    else paths.at(-1)!.segments.push(segmentTo(last, points));
    last = end;
  }
  return paths.filter(({ segments }) => segments.length > 1).map(closed);
}

/** A line, or a curve of two or three more points; one control point is raised to two. */
function segmentTo(start: Point, points: readonly Point[]): Segment {
  const end = points.at(-1)!;
  if (points.length === 1) return { kind: 'line', end };
  const [a, b] = points as readonly [Point, Point];
  if (points.length === 3) return { kind: 'cubic', control1: a, control2: b, end };
  const raised = (from: Point): Point => ({ x: from.x + ((a.x - from.x) * 2) / 3, y: from.y + ((a.y - from.y) * 2) / 3 });
  return { kind: 'cubic', control1: raised(start), control2: raised(end), end };
}

function closed({ start, segments }: { start: Point; segments: readonly Segment[] }): Path {
  const end = segments.at(-1)!.end;
  return { start, segments: same(end, start, 0) ? segments : [...segments, { kind: 'line', end: start }], closed: true };
}
