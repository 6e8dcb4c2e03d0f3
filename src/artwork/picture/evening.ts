import { type CoarseMap, filledMap, rowOf, type Seen } from './coarse.ts';
import { firstGround, firstMask, isLettering, maskOf, nothingSeen } from './ground.ts';
import type { Grid } from './grid.ts';

/** What a picture is once its lighting is taken out. */
export interface Evened {
  /** How much of each pixel is lettering: 0 ground, 1 lettering, in between where an edge crosses it. Noise goes beyond both. */
  readonly cover: Grid;
  readonly lettering: 'lighter' | 'darker';
  /** Light of ground and lettering, the middle of the picture's own range each. */
  readonly levels: readonly [number, number];
}

/** Rounds of measuring ground and lettering apart and dividing anew. */
const ROUNDS = 2;

/** Weight of the surroundings beside a cell's own pixels, as a share of a full cell: lettering is scarce and of one ink. */
const GROUND_TRUST = 0.05;
const INK_TRUST = 0.5;

/** Pixels along a cell that are looked at, at least: some hundred in each cell tell its level well enough. */
const ENOUGH = 12;

/** Pixels of each kind that must be seen for each cell of the picture on average; else pixels nearer to an edge are taken too. */
const LEAST_SEEN = 0.05;

/** Where ground and lettering come nearer to each other than this share of their usual distance, that is noise, not ink. */
const LEAST_SHARE = 0.3;

/**
 * Takes the lighting out. What the ground and the lettering send back is measured all over the picture, each on its own, as a slowly
 * changing level; a pixel is then placed between the two. A shaded page and faded ink come out alike, whichever is lighter.
 * Undefined when there are not two levels.
 */
export function evened(light: Grid, wanted: 'lighter' | 'darker' | 'either'): Evened | undefined {
  const tones = tonesOf(light);
  const lettering = wanted === 'either' ? isLettering(tones) : wanted;
  let mask = firstMask(tones, firstGround(tones, lettering), lettering);
  let found: Evened | undefined;
  for (let round = 0; round < ROUNDS; round++) {
    const levels = levelsOf(light, mask);
    found = levels && placedBetween(light, levels, lettering);
    if (found === undefined) return undefined;
    mask = maskOf(found.cover.values, 0.5);
  }
  return found;
}

/** Roots of light: close to what an eye, and a code value, makes of it, so that dark and light steps weigh alike. */
function tonesOf({ columns, rows, values }: Grid): Grid {
  const tones = new Float32Array(values.length);
  for (let i = 0; i < tones.length; i++) tones[i] = Math.sqrt(values[i]!);
  return { columns, rows, values: tones };
}

const strideOf = (cell: number): number => Math.max(1, Math.floor(cell / ENOUGH));

type Levels = readonly [ground: CoarseMap, ink: CoarseMap];

/** Ground and lettering, each from pixels whose surroundings are of their kind, as far around as strokes are wide enough. */
function levelsOf(light: Grid, mask: Uint8Array): Levels | undefined {
  for (const reach of [2, 1, 0]) {
    const seen = [nothingSeen(light), nothingSeen(light)] as const;
    see(light, mask, reach, seen);
    const least = reach === 0 ? 1 : LEAST_SEEN * seen[0].weights.length;
    if (seen.some(({ weights }) => weights.reduce((a, b) => a + b, 0) < least)) continue;
    const full = (seen[0].cell / strideOf(seen[0].cell)) ** 2;
    return [filledMap(seen[0], GROUND_TRUST * full), filledMap(seen[1], INK_TRUST * full)];
  }
  return undefined;
}

function see({ columns, rows, values }: Grid, mask: Uint8Array, reach: number, seen: readonly [Seen, Seen]): void {
  const { cell } = seen[0];
  const stride = strideOf(cell);
  for (let y = reach; y < rows - reach; y += stride) {
    const base = Math.floor(y / cell) * seen[0].columns;
    for (let x = reach, i = y * columns + reach; x < columns - reach; x += stride, i += stride) {
      const kind = mask[i]!;
      if (mask[i - reach] !== kind || mask[i + reach] !== kind || mask[i - reach * columns] !== kind || mask[i + reach * columns] !== kind) continue;
      const to = base + Math.floor(x / cell);
      const { sums, weights } = seen[kind]!;
      sums[to]! += values[i]!;
      weights[to]! += 1;
    }
  }
}

function placedBetween({ columns, rows, values }: Grid, [ground, ink]: Levels, lettering: 'lighter' | 'darker'): Evened | undefined {
  const sign = lettering === 'lighter' ? 1 : -1;
  const levels = [middleOf(ground.values), middleOf(ink.values)] as const;
  const usual = sign * (levels[1] - levels[0]);
  if (!(usual > 0)) return undefined;
  const cover = new Float32Array(values.length);
  const [low, high] = [new Float32Array(columns), new Float32Array(columns)];
  for (let y = 0, i = 0; y < rows; y++) {
    rowOf(ground, y, low);
    rowOf(ink, y, high);
    for (let x = 0; x < columns; x++, i++) {
      const span = Math.max(LEAST_SHARE * usual, sign * (high[x]! - low[x]!));
      cover[i] = (sign * (values[i]! - low[x]!)) / span;
    }
  }
  return { cover: { columns, rows, values: cover }, lettering, levels };
}

const middleOf = (values: Float32Array): number => values.slice().sort()[values.length >> 1]!;
