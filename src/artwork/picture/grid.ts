/** Numbers in rows and columns: what every step on a picture takes and gives. */
export interface Grid {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float32Array;
}

/** Averages blocks of `factor` x `factor`; a remainder at the right and lower edge is left out. */
export function averaged({ columns, rows, values }: Grid, factor: number): Grid {
  if (factor === 1) return { columns, rows, values };
  const [width, height] = [Math.floor(columns / factor), Math.floor(rows / factor)];
  const result = new Float32Array(width * height);
  for (let y = 0; y < height * factor; y++) {
    const to = Math.floor(y / factor) * width;
    for (let x = 0, from = y * columns; x < width * factor; x++, from++) result[to + Math.floor(x / factor)]! += values[from]!;
  }
  const share = 1 / (factor * factor);
  for (let i = 0; i < result.length; i++) result[i]! *= share;
  return { columns: width, rows: height, values: result };
}

/** Blurs by a Gaussian of standard deviation `sigma` pixels; beyond the edges the outermost values go on. */
export function blurred(grid: Grid, sigma: number): Grid {
  const reach = Math.ceil(3 * sigma);
  const weights = Float32Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-((i - reach) ** 2) / (2 * sigma * sigma)));
  const sum = weights.reduce((a, b) => a + b);
  const kernel = weights.map((weight) => weight / sum);
  const { columns, rows } = grid;
  const across = new Float32Array(grid.values.length);
  for (let y = 0; y < rows; y++) convolveRow(grid.values, across, { from: y * columns, length: columns, kernel, reach });
  const down = new Float32Array(grid.values.length);
  for (let y = 0; y < rows; y++) {
    for (let k = -reach; k <= reach; k++) {
      const [from, weight, to] = [Math.min(rows - 1, Math.max(0, y + k)) * columns, kernel[k + reach]!, y * columns];
      for (let x = 0; x < columns; x++) down[to + x]! += across[from + x]! * weight;
    }
  }
  return { columns, rows, values: down };
}

interface Row {
  readonly from: number;
  readonly length: number;
  readonly kernel: Float32Array;
  readonly reach: number;
}

function convolveRow(values: Float32Array, result: Float32Array, { from, length, kernel, reach }: Row): void {
  for (let x = 0; x < length; x++) {
    let total = 0;
    if (x >= reach && x + reach < length) for (let k = 0, at = from + x - reach; k < kernel.length; k++, at++) total += values[at]! * kernel[k]!;
    else for (let k = 0; k < kernel.length; k++) total += values[from + Math.min(length - 1, Math.max(0, x + k - reach))]! * kernel[k]!;
    result[from + x] = total;
  }
}

/** A value outside the range of its eight neighbours is brought into it: lone black and white pixels go, edges stay as they are. */
export function withoutOutliers({ columns, rows, values }: Grid): Grid {
  const result = values.slice();
  for (let y = 1; y < rows - 1; y++) {
    for (let x = 1, i = y * columns + 1; x < columns - 1; x++, i++) {
      const [above, below] = [i - columns, i + columns];
      const least = Math.min(values[i - 1]!, values[i + 1]!, values[above - 1]!, values[above]!, values[above + 1]!, values[below - 1]!, values[below]!, values[below + 1]!);
      const most = Math.max(values[i - 1]!, values[i + 1]!, values[above - 1]!, values[above]!, values[above + 1]!, values[below - 1]!, values[below]!, values[below + 1]!);
      if (values[i]! < least) result[i] = least;
      else if (values[i]! > most) result[i] = most;
    }
  }
  return { columns, rows, values: result };
}
