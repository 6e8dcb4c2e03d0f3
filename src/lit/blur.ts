import { type Raster, addDoubled, addTo, emptyRaster, halved } from './raster.ts';

/** One normal distribution of a mixture: its standard deviation, and its share of the light. */
export interface Haze {
  readonly sigma: number;
  readonly weight: number;
}

/** Wider blurs than this, in pixels, are made on a raster of half the size. */
const WIDEST = 2.5;

/** What halving and doubling add to the variance, in square pixels: three quarters of the light half a pixel off, a quarter one and a half, each time. */
const PYRAMID_VARIANCE = 2 * (0.75 * 0.5 ** 2 + 0.25 * 1.5 ** 2);

/**
 * Light spread by a mixture of normal distributions, `sigma` in pixels. All light is kept but what leaves the raster. Wide ones are
 * made on smaller rasters (P. Burt and E. Adelson, "The Laplacian pyramid as a compact image code", IEEE Trans. Comm. 31, 1983).
 */
export function spread(light: Raster, mixture: readonly Haze[], pause: () => void): Raster {
  const into = emptyRaster(light);
  const wide = mixture.filter(({ sigma }) => sigma > WIDEST);
  for (const { sigma, weight } of mixture) {
    if (sigma > WIDEST) continue;
    addTo(into, blurred(light, sigma), weight);
    pause();
  }
  if (wide.length === 0) return into;
  const half = wide.map(({ sigma, weight }): Haze => ({ sigma: Math.sqrt(sigma * sigma - PYRAMID_VARIANCE) / 2, weight }));
  addDoubled(into, spread(halved(light), half, pause));
  pause();
  return into;
}

/** Blurred by a normal distribution; beyond the edges there is nothing. Pixels to both sides are added first, so that mirrored rasters stay mirrored. */
export function blurred(light: Raster, sigma: number): Raster {
  const kernel = kernelOf(sigma);
  return kernel.length === 1 ? light : down(across(light, kernel), kernel);
}

/** Weights of the middle and of the pixels to one side, all of them together 1. */
function kernelOf(sigma: number): Float64Array {
  const reach = Math.ceil(3.2 * sigma);
  if (sigma < 0.1) return Float64Array.of(1);
  // Rounded, so that engines whose exponentials differ in their last bit make the same picture.
  const weights = Float64Array.from({ length: reach + 1 }, (_, i) => Math.round(Math.exp(-(i * i) / (2 * sigma * sigma)) * 1e9));
  const sum = weights.reduce((total, weight, i) => total + (i === 0 ? weight : 2 * weight), 0);
  return weights.map((weight) => weight / sum);
}

function across({ columns, rows, values }: Raster, kernel: Float64Array): Raster {
  const reach = kernel.length - 1;
  const result = emptyRaster({ columns, rows });
  const padded = new Float32Array(columns + 2 * reach);
  for (let y = 0; y < rows; y++) {
    const base = y * columns;
    padded.set(values.subarray(base, base + columns), reach);
    for (let x = 0; x < columns; x++) {
      const at = x + reach;
      let sum = kernel[0]! * padded[at]!;
      for (let k = 1; k <= reach; k++) sum += kernel[k]! * (padded[at - k]! + padded[at + k]!);
      result.values[base + x] = sum;
    }
  }
  return result;
}

function down({ columns, rows, values }: Raster, kernel: Float64Array): Raster {
  const reach = kernel.length - 1;
  const result = emptyRaster({ columns, rows });
  const sums = new Float64Array(columns);
  for (let y = 0; y < rows; y++) {
    sums.fill(0);
    for (let k = 0; k <= reach; k++) addRows(sums, values, k === 0 ? [y] : [y - k, y + k].filter((row) => row >= 0 && row < rows), kernel[k]!);
    result.values.set(sums, y * columns);
  }
  return result;
}

function addRows(sums: Float64Array, values: Float32Array, rows: readonly number[], weight: number): void {
  const columns = sums.length;
  if (rows.length === 2) {
    const [a, b] = [rows[0]! * columns, rows[1]! * columns];
    for (let x = 0; x < columns; x++) sums[x]! += weight * (values[a + x]! + values[b + x]!);
  } else if (rows.length === 1) {
    const a = rows[0]! * columns;
    for (let x = 0; x < columns; x++) sums[x]! += weight * values[a + x]!;
  }
}
