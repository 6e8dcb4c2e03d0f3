import { type Path, type Point, samplePath } from '../../../src/geometry/index.ts';
import { at, curve, uneven } from './curves.ts';
import { round, W } from './shapes-plain.ts';
import { drawn, type Truth } from './truth.ts';

/** A running line with `loops` loops that cross themselves, from left to right. */
const loops = (count: number): Path => curve((t) => {
  const turn = 2 * Math.PI * count * t;
  return at(90 * count * t - 44 * Math.sin(turn), 44 - 44 * Math.cos(turn) + 6 * Math.sin(3 * t));
}, 24 * count);

/** Four strokes that cross at seven places (five of them a stroke with itself) and meet at one. */
export function word(seed = 51): Truth {
  const line = loops(6);
  const tall = curve((t) => at(224 + 12 * t - 14 * Math.sin(4 * t), 150 - 195 * t));
  const bar = curve((t) => at(160 + 150 * t, 122 + 8 * Math.sin(5 * t)));
  const onBar = samplePath(bar, 1)[20]!.point;
  const hook = curve((t) => at(onBar.x - 34 * t + 10 * Math.sin(3 * t), onBar.y + 60 * t));
  const law = (k: number) => uneven(W, 0.15, seed + k, 3);
  return drawn('word: 4 strokes, 7 X, 1 T', [round(line, law(0)), round(tall, law(1)), round(bar, law(2)), round(hook, law(3))], [[3, 0]]);
}

/** A phrase of `words` words side by side. */
export function phrase(words: number): Truth {
  const one = word();
  const move = ({ x, y }: Point, i: number): Point => at(x + 640 * i, y);
  const shift = (path: Path, i: number): Path => ({
    ...path, start: move(path.start, i),
    segments: path.segments.map((segment) => (segment.kind === 'cubic'
      ? { ...segment, control1: move(segment.control1, i), control2: move(segment.control2, i), end: move(segment.end, i) } : { ...segment, end: move(segment.end, i) })),
  });
  const places = Array.from({ length: words }, (_, i) => i);
  return {
    ...one, name: `${words} words`, counts: [words * one.strokes.length],
    outlines: places.flatMap((i) => one.outlines.map((outline) => ({ ...outline, paths: outline.paths.map((path) => shift(path, i)) }))),
    strokes: places.flatMap((i) => one.strokes.map((stroke) => ({ ...stroke, path: shift(stroke.path, i) }))),
  };
}

/** How often the strokes' centre lines cross, their own crossings counted; ends that lie on another stroke do not count. */
export function crossings({ strokes, width }: Truth): number {
  const lines = strokes.flatMap(({ path }) => {
    const points = samplePath(path, width / 10).map(({ point }) => point);
    return points.slice(1).map((to, i) => ({ from: points[i]!, to }));
  });
  let count = 0;
  for (let i = 0; i < lines.length; i++) for (let j = i + 2; j < lines.length; j++) if (cross(lines[i]!, lines[j]!)) count++;
  return count;
}

interface Piece { readonly from: Point; readonly to: Point }

const side = (a: Point, b: Point, p: Point) => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
const cross = (a: Piece, b: Piece) => side(a.from, a.to, b.from) * side(a.from, a.to, b.to) < 0 && side(b.from, b.to, a.from) * side(b.from, b.to, a.to) < 0;

