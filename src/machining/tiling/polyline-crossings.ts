import type { Point } from '../../geometry/index.ts';

/** A chord of a line, the lower end along x first. */
interface Chord {
  readonly line: number;
  readonly index: number;
  readonly a: Point;
  readonly b: Point;
}

/**
 * Where lines cross each other or themselves. Neighbouring chords of one line are not looked at; touching counts. Lines
 * that start on one another are found by their ends.
 */
export function crossingsBetween(lines: readonly (readonly Point[])[]): Point[] {
  const chords = lines.flatMap((points, line) => points.slice(1).map((to, index): Chord => {
    const from = points[index]!;
    return from.x <= to.x ? { line, index, a: from, b: to } : { line, index, a: to, b: from };
  })).sort((one, other) => one.a.x - other.a.x);
  const found: Point[] = [];
  let open: Chord[] = [];
  for (const chord of chords) {
    open = open.filter(({ b }) => b.x >= chord.a.x);
    for (const other of open) {
      const at = areNeighbours(chord, other, lines[chord.line]!.length - 1) ? undefined : crossingOf(chord, other);
      if (at) found.push(at);
    }
    open.push(chord);
  }
  return found;
}

function areNeighbours(a: Chord, b: Chord, chords: number): boolean {
  const apart = Math.abs(a.index - b.index);
  return a.line === b.line && (apart <= 1 || apart >= chords - 1);
}

function crossingOf(one: Chord, other: Chord): Point | undefined {
  if (Math.max(one.a.y, one.b.y) < Math.min(other.a.y, other.b.y) || Math.max(other.a.y, other.b.y) < Math.min(one.a.y, one.b.y)) return undefined;
  const [ux, uy] = [one.b.x - one.a.x, one.b.y - one.a.y];
  const [vx, vy] = [other.b.x - other.a.x, other.b.y - other.a.y];
  const turn = ux * vy - uy * vx;
  if (turn === 0) return undefined;
  const [wx, wy] = [other.a.x - one.a.x, other.a.y - one.a.y];
  const [t, s] = [(wx * vy - wy * vx) / turn, (wx * uy - wy * ux) / turn];
  return t >= 0 && t <= 1 && s >= 0 && s <= 1 ? { x: one.a.x + t * ux, y: one.a.y + t * uy } : undefined;
}
