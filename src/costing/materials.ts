/** What a row of a bill of materials is about; the first eight are what a rate is asked for. */
export type Part = 'sheet' | 'strip' | 'tube' | 'wire' | 'supply' | 'fuse' | 'fixing' | 'machine' | 'cutter' | 'sign';

/** Units of quantities, as they are written. */
export type MaterialUnit = 'm2' | 'm' | 'count' | 'min' | 'kg' | 'ratio';

/** One thing that goes into a sign, or a figure about it. */
export interface MaterialRow {
  readonly part: Part;
  /** What it is, in words. */
  readonly item: string;
  readonly quantity: number;
  readonly unit: MaterialUnit;
  /** Whether it is bought or spent: what only tells more about another row is not counted again. */
  readonly counts: boolean;
}

/** All that goes into one sign. */
export interface Materials {
  readonly rows: readonly MaterialRow[];
  readonly setUps: number;
}

/** Decimals of quantities: a gram, a millimetre, a square decimetre's hundredth. What is printed is what is reckoned with. */
const DECIMALS: Readonly<Record<MaterialUnit, number>> = { m2: 4, m: 3, count: 0, min: 1, kg: 3, ratio: 3 };

/** A quantity as it is printed and reckoned with. */
export const rounded = (quantity: number, unit: MaterialUnit): number => Number(quantity.toFixed(DECIMALS[unit])) || 0;

/** All of one part that counts, in the unit it comes in. */
export function totalOf({ rows }: Materials, part: Part): number {
  return rows.filter((row) => row.part === part && row.counts).reduce((sum, { quantity }) => sum + quantity, 0);
}
