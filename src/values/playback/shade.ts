import type { DepthGrid } from '../../machining/proof/removal.ts';

type Tone = readonly [number, number, number];

/** What the shaded sheet is painted with: its top face, the depth of the deepest cut, and the board that shows through it. */
interface Tones {
  readonly top: Tone;
  readonly deep: Tone;
  readonly board: Tone;
  readonly hatch: Tone;
}

/** Paper, groove, bench and edge of the page's light and dark palette. */
const LIGHT: Tones = { top: [255, 254, 250], deep: [92, 106, 110], board: [229, 226, 214], hatch: [133, 131, 117] };
const DARK: Tones = { top: [29, 32, 34], deep: [128, 143, 146], board: [16, 18, 20], hatch: [125, 131, 130] };

/** Toward the light, low in the upper left, so that upright walls stand out: x right, y up, z toward the eye. Of length 1. */
const [LX, LY, LZ] = [-0.68, 0.68, Math.sqrt(1 - 2 * 0.68 ** 2)];
/** How far a wall full in the light goes to white, and one turned from it to black. */
const LIT = 0.75;
const SHADED = 0.7;
/** The shallowest cut is told from the top face by this much of the way to the deepest one. */
const LEAST_TINT = 0.3;
/** Cells from one line of the hatching to the next, and how many of them the line takes. */
const HATCH = 6;
const HATCH_LINE = 2;
/** A cut this close to the sheet's lower face, mm, is through it: a grid keeps depths to a few millionths. */
const THROUGH = 1e-4;

/** Cells of a grid: from the first column and row to the last one, both counted in. */
export interface CellWindow {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

export interface ShadeStyle {
  /** Depth that has the full tint, mm, above 0. */
  readonly deepest: number;
  /** Thickness of the sheet, mm: what is cut deeper shows the spoilboard. Infinity where it is not known. */
  readonly thickness: number;
  readonly dark: boolean;
}

/**
 * Paints what is left of the sheet as a relief lit from the upper left, depth told by tone, the spoilboard by
 * hatching. Four bytes (RGBA) to a cell, rows from the top; only the cells of `window` are painted.
 */
export function shadeCells(grid: DepthGrid, style: ShadeStyle, pixels: Uint8ClampedArray, window: CellWindow): void {
  const { columns, rows, depth } = grid;
  const tones = style.dark ? DARK : LIGHT;
  const through = THROUGH - style.thickness;
  const scale = 0.5 / grid.cell;
  for (let row = window.bottom; row <= window.top; row++) {
    const below = row > 0 ? columns : 0;
    const above = row < rows - 1 ? columns : 0;
    let out = 4 * ((rows - 1 - row) * columns + window.left);
    for (let column = window.left; column <= window.right; column++, out += 4) {
      const i = row * columns + column;
      const z = depth[i]!;
      if (z <= through) {
        paint(pixels, out, (column + row) % HATCH < HATCH_LINE ? tones.hatch : tones.board, 0);
        continue;
      }
      const acrossX = depth[column < columns - 1 ? i + 1 : i]! - depth[column > 0 ? i - 1 : i]!;
      const acrossY = depth[i + above]! - depth[i - below]!;
      const lit = acrossX === 0 && acrossY === 0 ? 0 : light(acrossX * scale, acrossY * scale);
      if (z < 0) tint(pixels, out, tones, { share: LEAST_TINT + (1 - LEAST_TINT) * Math.min(1, -z / style.deepest), lit });
      else paint(pixels, out, tones.top, lit);
    }
  }
}

/** Lambert's law, told against the light on a level face: 0 there, 1 full in the light, -1 turned from it. */
function light(slopeX: number, slopeY: number): number {
  const bright = (LZ - slopeX * LX - slopeY * LY) / Math.sqrt(slopeX * slopeX + slopeY * slopeY + 1);
  return bright >= LZ ? (bright - LZ) / (1 - LZ) : Math.max(-1, bright / LZ - 1);
}

function paint(pixels: Uint8ClampedArray, out: number, tone: Tone, lit: number): void {
  const toward = lit > 0 ? 255 : 0;
  const share = lit > 0 ? LIT * lit : -SHADED * lit;
  for (let k = 0; k < 3; k++) pixels[out + k] = tone[k]! + share * (toward - tone[k]!);
  pixels[out + 3] = 255;
}

function tint(pixels: Uint8ClampedArray, out: number, { top, deep }: Tones, { share, lit }: { readonly share: number; readonly lit: number }): void {
  const mix = (k: 0 | 1 | 2) => top[k] + share * (deep[k] - top[k]);
  paint(pixels, out, [mix(0), mix(1), mix(2)], lit);
}
