import type { Grid } from './grid.ts';

/** Connected pixels of one kind. */
export interface Shape {
  readonly isInk: boolean;
  readonly pixels: number;
  /** Sides of its pixels that border on the other kind. */
  readonly sides: number;
  /** Where it lies at the picture's edge, if it does: the middle of its first stretch there, in pixels. */
  readonly edge: { readonly column: number; readonly row: number } | undefined;
  readonly runs: readonly Run[];
}

/** Pixels of one kind side by side: columns from `from` up to, not including, `to`. */
interface Run {
  readonly row: number;
  readonly from: number;
  readonly to: number;
  readonly isInk: boolean;
  /** Its sides to the other kind, left, right and above; those below are counted as the next row's above. */
  sides: number;
  /** The run it belongs with: itself, or an earlier one. */
  joined: number;
}

/**
 * All connected shapes of lettering and of ground, in the order of their first pixels. Lettering holds together over corners too, so
 * that a thin diagonal line is one shape; ground does not.
 */
export function shapesOf(grid: Grid, threshold: number): Shape[] {
  const runs: Run[] = [];
  let [above, first] = [0, 0];
  for (let row = 0; row < grid.rows; row++) {
    [above, first] = [first, runs.length];
    pushRow(runs, grid, row, threshold);
    joinRow(runs, above, first);
  }
  return gathered(runs, grid);
}

function pushRow(runs: Run[], { columns, values }: Grid, row: number, threshold: number): void {
  for (let from = 0, base = row * columns; from < columns;) {
    const isInk = values[base + from]! >= threshold;
    let to = from + 1;
    while (to < columns && values[base + to]! >= threshold === isInk) to++;
    runs.push({ row, from, to, isInk, sides: (from > 0 ? 1 : 0) + (to < columns ? 1 : 0), joined: runs.length });
    from = to;
  }
}

/** Joins the runs of the last row, which begin at `first`, with those of the row above, which begin at `above`. */
function joinRow(runs: Run[], above: number, first: number): void {
  for (let start = above, k = first; k < runs.length; k++) {
    const lower = runs[k]!;
    while (start < first && runs[start]!.to < lower.from) start++;
    for (let i = start; i < first && runs[i]!.from <= lower.to; i++) {
      const upper = runs[i]!;
      const shared = Math.min(upper.to, lower.to) - Math.max(upper.from, lower.from);
      if (upper.isInk !== lower.isInk) [upper.sides, lower.sides] = [upper.sides + Math.max(0, shared), lower.sides + Math.max(0, shared)];
      else if (shared > 0 || lower.isInk) join(runs, i, k);
    }
  }
}

function rootOf(runs: readonly Run[], at: number): number {
  let root = at;
  while (runs[root]!.joined !== root) root = runs[root]!.joined;
  for (let i = at; i !== root;) {
    const next = runs[i]!.joined;
    runs[i]!.joined = root;
    i = next;
  }
  return root;
}

function join(runs: readonly Run[], a: number, b: number): void {
  const [first, second] = [rootOf(runs, a), rootOf(runs, b)];
  runs[Math.max(first, second)]!.joined = Math.min(first, second);
}

interface Gathering { pixels: number; sides: number; edge: Shape['edge']; readonly isInk: boolean; readonly runs: Run[] }

function gathered(runs: readonly Run[], grid: Grid): Shape[] {
  const shapes = new Map<number, Gathering>();
  runs.forEach((run, i) => {
    const root = rootOf(runs, i);
    const shape = shapes.get(root) ?? { pixels: 0, sides: 0, edge: undefined, isInk: run.isInk, runs: [] };
    if (root === i) shapes.set(root, shape);
    shape.pixels += run.to - run.from;
    shape.sides += run.sides;
    shape.edge ??= edgeOf(run, grid);
    shape.runs.push(run);
  });
  return [...shapes.values()];
}

function edgeOf({ row, from, to }: Run, { columns, rows }: Grid): Shape['edge'] {
  if (row === 0 || row === rows - 1) return { column: (from + to) / 2, row: row + 0.5 };
  if (from === 0) return { column: 0, row: row + 0.5 };
  return to === columns ? { column: columns, row: row + 0.5 } : undefined;
}

/**
 * Width of the strokes in pixels: twice the area by the perimeter, each shape counting by its area, so that specks count little. A
 * slanting edge has more sides than length: pi / 4 is the mean ratio over all directions.
 */
export function strokeWidth(shapes: readonly Shape[]): number {
  const [sum, total] = shapes.filter(({ isInk, sides }) => isInk && sides > 0)
    .reduce(([all, area], { pixels, sides }) => [all + (pixels * 2 * pixels) / ((Math.PI / 4) * sides), area + pixels], [0, 0] as [number, number]);
  return total === 0 ? 0 : sum / total;
}

/** The grid with all pixels of some shapes set to what is around them. */
export function without({ columns, rows, values }: Grid, shapes: readonly Shape[]): Grid {
  const result = values.slice();
  for (const { isInk, runs } of shapes) for (const { row, from, to } of runs) result.fill(isInk ? 0 : 1, row * columns + from, row * columns + to);
  return { columns, rows, values: result };
}
