import { type CoarseMap, extremes, filledMap, rowOf, type Seen } from './coarse.ts';
import type { Grid } from './grid.ts';
import { histogramOf, otsu } from './otsu.ts';

/** Cells along the picture's longer side: lighting changes more slowly than that, and strokes are narrower than several. */
const CELLS = 64;

/** Not even a small picture has smaller cells, in pixels. */
const LEAST_CELL = 8;

/** Cells to every side that the lettering is taken to leave some ground in: strokes up to a fifth of the picture. */
const REACH = 6;

/** The share of a cell's pixels that are darker than what is taken for its paper: above the middle, below glints and dust. */
const PAPER_SHARE = 0.8;

const TONES = 64;

/** A darker ground than this share of full light is no paper: shares of it would be shares of noise. */
const DARKEST = 0.02;

/** The smallest tone by which anything may stand out from the ground. */
const LEAST_STEP = 1e-4;

const cellOf = ({ columns, rows }: Grid): number => Math.max(LEAST_CELL, Math.ceil(Math.max(columns, rows) / CELLS));

/** An empty record of what is seen in the cells of a picture. */
export function nothingSeen(grid: Grid): Seen {
  const cell = cellOf(grid);
  const [columns, rows] = [Math.ceil(grid.columns / cell), Math.ceil(grid.rows / cell)];
  return { cell, columns, rows, sums: new Float64Array(columns * rows), weights: new Float64Array(columns * rows) };
}

/**
 * Whether the lettering is lighter than its ground: the ground is what runs along the picture's edges, carried on inwards, and the
 * lettering what departs from it most.
 */
export function isLettering(tones: Grid): 'lighter' | 'darker' {
  const { columns, rows, values } = tones;
  const seen = nothingSeen(tones);
  const rim = Math.max(1, Math.round(Math.min(columns, rows) / 50));
  forRim(tones, rim, (x, y) => {
    const to = Math.floor(y / seen.cell) * seen.columns + Math.floor(x / seen.cell);
    seen.sums[to]! += values[y * columns + x]!;
    seen.weights[to]! += 1;
  });
  const ground = filledMap(seen, 1);
  const row = new Float32Array(columns);
  let cubes = 0;
  for (let y = 0, i = 0; y < rows; y++) {
    rowOf(ground, y, row);
    for (let x = 0; x < columns; x++, i++) {
      const apart = values[i]! - row[x]!;
      cubes += apart * apart * apart;
    }
  }
  return cubes > 0 ? 'lighter' : 'darker';
}

function forRim({ columns, rows }: Grid, rim: number, see: (x: number, y: number) => void): void {
  for (let y = 0; y < rows; y++) {
    const isWhole = y < rim || y >= rows - rim;
    for (let x = 0; x < columns; x++) if (isWhole || x < rim || x >= columns - rim) see(x, y);
  }
}

/** The ground's tone as a first guess: what most of a cell is, lettering bridged from the cells around it. */
export function firstGround(tones: Grid, lettering: 'lighter' | 'darker'): CoarseMap {
  const [rise, fall] = lettering === 'darker' ? [Math.max, Math.min] : [Math.min, Math.max];
  const share = lettering === 'darker' ? PAPER_SHARE : 1 - PAPER_SHARE;
  return extremes(extremes(cellShares(tones, share), REACH, rise), REACH, fall);
}

function cellShares(tones: Grid, share: number): CoarseMap {
  const { cell, columns, rows } = nothingSeen(tones);
  const counts = new Uint32Array(columns * rows * TONES);
  for (let y = 0, i = 0; y < tones.rows; y++) {
    const base = Math.floor(y / cell) * columns;
    for (let x = 0; x < tones.columns; x++, i++) counts[(base + Math.floor(x / cell)) * TONES + Math.min(TONES - 1, Math.floor(tones.values[i]! * TONES))]! += 1;
  }
  const values = Float32Array.from({ length: columns * rows }, (_, i) => toneAt(counts.subarray(i * TONES, (i + 1) * TONES), share));
  return { cell, columns, rows, values };
}

/** The tone that a share of the counted pixels lie under. */
function toneAt(counts: Uint32Array, share: number): number {
  const total = counts.reduce((a, b) => a + b, 0);
  let below = 0;
  for (let tone = 0; tone < counts.length; tone++) {
    const next = below + counts[tone]!;
    if (next >= share * total && next > below) return (tone + (share * total - below) / (next - below)) / TONES;
    below = next;
  }
  return 1;
}

/** Which pixels depart from the ground towards the lettering, by Otsu's split of how far they do. */
export function firstMask(tones: Grid, ground: CoarseMap, lettering: 'lighter' | 'darker'): Uint8Array {
  const { columns, rows, values } = tones;
  const apart = new Float32Array(values.length);
  const row = new Float32Array(columns);
  for (let y = 0, i = 0; y < rows; y++) {
    rowOf(ground, y, row);
    if (lettering === 'darker') for (let x = 0; x < columns; x++, i++) apart[i] = 1 - values[i]! / Math.max(DARKEST, row[x]!);
    else for (let x = 0; x < columns; x++, i++) apart[i] = values[i]! - row[x]!;
  }
  let most = LEAST_STEP;
  for (const value of apart) if (value > most) most = value;
  return maskOf(apart, (otsu(histogramOf(apart, [0, most], 256)).at / 256) * most);
}

/** 1 where a value is over the threshold, 0 elsewhere. */
export function maskOf(values: Float32Array, threshold: number): Uint8Array {
  const mask = new Uint8Array(values.length);
  for (let i = 0; i < mask.length; i++) if (values[i]! > threshold) mask[i] = 1;
  return mask;
}
