import type { Raster } from './raster.ts';

/**
 * Thins a raster's ink to lines one pixel wide (Z. Guo and R. W. Hall, Parallel thinning with two-subiteration algorithms,
 * Communications of the ACM 32, 1989, 359-373, their first algorithm). Both rules are tables over the eight neighbours, and a pixel is
 * looked at only when one of its neighbours has changed, so that the work grows with the ink and not with the sheet.
 */
export function thin({ columns, ink }: Raster): Uint8Array {
  const left = ink.slice();
  const around = [columns, columns + 1, 1, 1 - columns, -columns, -columns - 1, -1, columns - 1] as const;
  const waiting = new Uint8Array(left.length);
  let fresh: number[] = [];
  for (let at = left.indexOf(1); at >= 0; at = left.indexOf(1, at + 1)) if (!(left[at - 1] && left[at + 1] && left[at - columns] && left[at + columns])) fresh.push(at);
  let seen: number[] = [];
  for (let half = 0; fresh.length + seen.length > 0; half = 1 - half) {
    const goes = (at: number) => RULES[half]![codeAt(left, around, at)] === 1;
    const kept = fresh.filter((at) => !goes(at));
    const gone = [...fresh.filter(goes), ...seen.filter((at) => left[at] && goes(at))];
    for (const at of gone) left[at] = 0;
    fresh = neighboursOf(gone, left, around, waiting);
    seen = kept.filter((at) => left[at] && !waiting[at]);
    for (const at of fresh) waiting[at] = 0;
  }
  return left;
}

type Around = readonly [number, number, number, number, number, number, number, number];

/** The neighbours as bits, from the one above clockwise. */
function codeAt(ink: Uint8Array, around: Around, at: number): number {
  return ink[at + around[0]]! | (ink[at + around[1]]! << 1) | (ink[at + around[2]]! << 2) | (ink[at + around[3]]! << 3)
    | (ink[at + around[4]]! << 4) | (ink[at + around[5]]! << 5) | (ink[at + around[6]]! << 6) | (ink[at + around[7]]! << 7);
}

/** Ink next to what has gone, each once; marked as waiting. */
function neighboursOf(gone: readonly number[], ink: Uint8Array, around: Around, waiting: Uint8Array): number[] {
  const found: number[] = [];
  for (const at of gone) {
    for (const step of around) {
      if (!ink[at + step] || waiting[at + step]) continue;
      waiting[at + step] = 1;
      found.push(at + step);
    }
  }
  return found;
}

/** Whether a pixel with these neighbours goes, in either half of a round. */
const RULES = [0, 1].map((half) => Uint8Array.from({ length: 256 }, (_, code) => {
  const [p2, p3, p4, p5, p6, p7, p8, p9] = Array.from({ length: 8 }, (_unused, i) => (code >> i) & 1) as [number, number, number, number, number, number, number, number];
  const not = (p: number) => 1 - p;
  const runs = (not(p2) & (p3 | p4)) + (not(p4) & (p5 | p6)) + (not(p6) & (p7 | p8)) + (not(p8) & (p9 | p2));
  const count = Math.min((p9 | p2) + (p3 | p4) + (p5 | p6) + (p7 | p8), (p2 | p3) + (p4 | p5) + (p6 | p7) + (p8 | p9));
  const side = half === 0 ? (p2 | p3 | not(p5)) & p4 : (p6 | p7 | not(p9)) & p8;
  return runs === 1 && count >= 2 && count <= 3 && side === 0 ? 1 : 0;
}));
