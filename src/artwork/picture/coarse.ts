/** A slowly changing quantity of a picture, by its values at the middles of square cells. */
export interface CoarseMap {
  /** Pixels a cell is wide and high. */
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  readonly values: Float32Array;
}

/** One row of a coarse map at the height of a picture's row, for every pixel of it: straight between cell middles, level outside them. */
export function rowOf({ cell, columns, rows, values }: CoarseMap, y: number, into: Float32Array): void {
  const down = Math.min(rows - 1, Math.max(0, (y + 0.5) / cell - 0.5));
  const [above, share] = [Math.min(rows - 1, Math.floor(down)), down - Math.floor(down)];
  const below = Math.min(rows - 1, above + 1);
  const at = (column: number) => values[above * columns + column]! * (1 - share) + values[below * columns + column]! * share;
  for (let column = -1; column < columns; column++) {
    const [left, right] = [at(Math.max(0, column)), at(Math.min(columns - 1, column + 1))];
    const middle = (column + 0.5) * cell - 0.5;
    const [from, to] = [Math.max(0, Math.ceil(middle)), Math.min(into.length, Math.ceil(middle + cell))];
    for (let x = from; x < to; x++) into[x] = left + ((right - left) * (x - middle)) / cell;
  }
}

/** Largest (or smallest) value in a square window of `reach` cells to every side. */
export function extremes(map: CoarseMap, reach: number, pick: (a: number, b: number) => number): CoarseMap {
  const { columns, rows, values } = map;
  const across = values.map((_, i) => windowed(values, { base: i - (i % columns), stride: 1, length: columns, at: i % columns }, reach, pick));
  return { ...map, values: across.map((_, i) => windowed(across, { base: i % columns, stride: columns, length: rows, at: Math.floor(i / columns) }, reach, pick)) };
}

/** A place in a row or column of a map: its first value, the step to the next, how many there are, and which one is meant. */
interface Line {
  readonly base: number;
  readonly stride: number;
  readonly length: number;
  readonly at: number;
}

function windowed(values: Float32Array, { base, stride, length, at }: Line, reach: number, pick: (a: number, b: number) => number): number {
  let value = values[base + at * stride]!;
  for (let k = Math.max(0, at - reach); k <= Math.min(length - 1, at + reach); k++) value = pick(value, values[base + k * stride]!);
  return value;
}

/** Sums and weights of what was seen in each cell. */
export interface Seen {
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  readonly sums: Float64Array;
  readonly weights: Float64Array;
}

/**
 * Means of what was seen, filled in from wider and wider surroundings where little or nothing was: each level of a pyramid counts as
 * `trust` of weight beside the finer one (S. Gortler et al., "The Lumigraph", SIGGRAPH 1996: pull and push).
 */
export function filledMap(seen: Seen, trust: number): CoarseMap {
  const { cell, columns, rows, sums, weights } = seen;
  if (columns * rows === 1) return { cell, columns, rows, values: Float32Array.of(weights[0]! > 0 ? sums[0]! / weights[0]! : NaN) };
  const wide = filledMap(halved(seen), trust);
  const values = new Float32Array(columns * rows);
  const guess = new Float32Array(columns);
  for (let y = 0; y < rows; y++) {
    rowOf({ ...wide, cell: 2 }, y, guess);
    for (let x = 0, i = y * columns; x < columns; x++, i++) values[i] = (sums[i]! + trust * guess[x]!) / (weights[i]! + trust);
  }
  return { cell, columns, rows, values };
}

function halved({ cell, columns, rows, sums, weights }: Seen): Seen {
  const [width, height] = [Math.ceil(columns / 2), Math.ceil(rows / 2)];
  const half = { cell: 2 * cell, columns: width, rows: height, sums: new Float64Array(width * height), weights: new Float64Array(width * height) };
  for (let i = 0; i < sums.length; i++) {
    const to = Math.floor(Math.floor(i / columns) / 2) * width + Math.floor((i % columns) / 2);
    half.sums[to]! += sums[i]!;
    half.weights[to]! += weights[i]!;
  }
  return half;
}
