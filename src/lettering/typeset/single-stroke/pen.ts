import { cross, distance, dot, type Point, subtract } from '../../../geometry/index.ts';

/** A line of points that a pen draws, and the letter it begins in. */
export interface PenLine {
  readonly points: readonly Point[];
  readonly letter: number;
  readonly source: string;
}

/** A pen goes on where it turns by less than this; beyond, it comes to a corner. Curves of the data turn by up to 45 degrees at a point. */
export const CORNER_DEGREES = 50;

/** How far the direction turns, degrees, from one step to the next. */
export const turnAt = (before: Point, at: Point, after: Point): number => {
  const [u, v] = [subtract(at, before), subtract(after, at)];
  return Math.abs((Math.atan2(cross(u, v), dot(u, v)) * 180) / Math.PI);
};

/** Lines in the order they are drawn; one that begins where the one before it ends, in its direction, is the same line. */
export function joinLines(lines: readonly PenLine[], reach: number): { readonly lines: readonly PenLine[]; readonly acrossLetters: number } {
  const joined: PenLine[] = [];
  let acrossLetters = 0;
  for (const line of lines.filter(({ points }) => points.length > 1)) {
    const last = joined.map((other) => goesOn(other, line, reach)).lastIndexOf(true);
    if (last < 0) joined.push(line);
    else {
      const before = joined[last]!;
      if (before.letter !== line.letter) acrossLetters += 1;
      joined[last] = { ...before, points: [...before.points, ...line.points.slice(1)], letter: line.letter, source: before.letter === line.letter ? before.source : `${before.source}, ${line.source}` };
    }
  }
  return { lines: joined, acrossLetters };
}

function goesOn({ points: a }: PenLine, { points: b }: PenLine, reach: number): boolean {
  const end = a.at(-1)!;
  return distance(end, b[0]!) <= reach && turnAt(a.at(-2)!, end, b[1]!) < CORNER_DEGREES;
}
