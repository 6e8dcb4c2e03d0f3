/** Numbers in rows and columns, from the upper left corner: cover, light, shade. */
export interface Raster {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float32Array;
}

export const emptyRaster = ({ columns, rows }: Pick<Raster, 'columns' | 'rows'>): Raster => ({ columns, rows, values: new Float32Array(columns * rows) });

/** Adds `weight` times one raster to another of the same size, in place. */
export function addTo({ values }: Raster, more: Raster, weight: number): void {
  for (let i = 0; i < values.length; i++) values[i]! += weight * more.values[i]!;
}

/** The pixel of a half raster that a pixel lies in, and the one it lies nearest to beside that: three quarters and a quarter keep its place. */
const beside = (at: number, length: number): number => Math.min(length - 1, Math.max(0, (at >> 1) + (at % 2 === 0 ? -1 : 1)));

/** A raster of half the size. Each pixel goes to those about it so that all light is kept, and its middle stays where it is. */
export function halved({ columns, rows, values }: Raster): Raster {
  const half = emptyRaster({ columns: Math.ceil(columns / 2), rows: Math.ceil(rows / 2) });
  const neighbours = Int32Array.from({ length: columns }, (_, x) => beside(x, half.columns));
  const row = new Float32Array(half.columns);
  for (let y = 0, from = 0; y < rows; y++) {
    row.fill(0);
    for (let x = 0; x < columns; x++, from++) {
      const quarter = values[from]! / 16;
      row[x >> 1]! += 3 * quarter;
      row[neighbours[x]!]! += quarter;
    }
    const [near, far] = [(y >> 1) * half.columns, beside(y, half.rows) * half.columns];
    for (let x = 0; x < half.columns; x++) {
      half.values[near + x]! += 0.75 * row[x]!;
      half.values[far + x]! += 0.25 * row[x]!;
    }
  }
  return half;
}

/** Adds a raster of half the size to a full one, straight between the middles of its pixels. */
export function addDoubled(into: Raster, half: Raster): void {
  const { columns, rows, values } = into;
  const neighbours = Int32Array.from({ length: columns }, (_, x) => beside(x, half.columns));
  const row = new Float32Array(half.columns);
  for (let y = 0, to = 0; y < rows; y++) {
    const [near, far] = [(y >> 1) * half.columns, beside(y, half.rows) * half.columns];
    for (let x = 0; x < half.columns; x++) row[x] = 0.75 * half.values[near + x]! + 0.25 * half.values[far + x]!;
    for (let x = 0; x < columns; x++, to++) values[to]! += 0.75 * row[x >> 1]! + 0.25 * row[neighbours[x]!]!;
  }
}
