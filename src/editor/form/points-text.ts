import { type ParsedParam, type PointsParam, parseParam } from '../../runtime/index.ts';

export type Points = PointsParam['default'];

/** Points as text: a line for each, `x,y` in mm. */
export const pointsText = (points: Points): string => points.map(({ x, y }) => `${x},${y}`).join('\n');

/** Columns of a table as `x,y`: numbers with a tab, a semicolon or a comma and space between them. */
const COLUMNS = /^([+-]?[\d.]+)(?:\s*[;,]\s*|\s+)([+-]?[\d.]+)$/;

/** Reads `x,y x,y`, or a line for each point as copied from a table. */
export function readPoints(param: PointsParam, text: string): ParsedParam {
  const lines = text.split(/\r?\n/).map((line) => line.trim().replace(COLUMNS, '$1,$2'));
  return parseParam(param, lines.join(' '));
}

/** The points in a pasted text; undefined when it is no list of points, as a single number is none. */
export function pastedPoints(param: PointsParam, text: string): Points | undefined {
  if (!/[\t,;\n]/.test(text.trim())) return undefined;
  const read = readPoints(param, text);
  return read.ok && (read.value as Points).length > 0 ? (read.value as Points) : undefined;
}

/** The list with a point moved to another place in it. */
export function reordered(points: Points, from: number, to: number): Points {
  const point = points[from];
  if (point === undefined || to < 0 || to >= points.length) return points;
  const rest = points.toSpliced(from, 1);
  return rest.toSpliced(to, 0, point);
}
