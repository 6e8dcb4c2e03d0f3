import { type Materials, type Part, rounded, totalOf } from './materials.ts';

/** What a rate is asked for. */
export type RatedPart = Extract<Part, 'sheet' | 'strip' | 'tube' | 'wire' | 'supply' | 'fuse' | 'fixing' | 'machine'> | 'bench';

/** Prices in whatever currency the shop counts in: by the square metre, metre, piece or hour. */
export interface Rates {
  readonly of: Readonly<Record<RatedPart, number>>;
  /** Added to the cost of what goes in, as a share of it. */
  readonly margin: number;
  readonly tax: number;
  readonly taxName: string;
  /** What stands behind amounts; may be empty. */
  readonly currency: string;
  /** Whether a person put their own in the place of those it came with. */
  readonly own: boolean;
}

/** One line of a price. */
export interface PriceLine {
  readonly part: RatedPart;
  readonly item: string;
  /** As it is printed. */
  readonly quantity: number;
  readonly unit: string;
  readonly rate: number;
  /** In hundredths of the currency: whole, so that sums are exact. */
  readonly hundredths: number;
}

/** What a sign costs. All amounts in hundredths of the currency. */
export interface Price {
  readonly lines: readonly PriceLine[];
  readonly cost: number;
  readonly margin: number;
  readonly net: number;
  readonly tax: number;
  readonly total: number;
  readonly rates: Rates;
}

/** What a part is sold by: how many of the bill's unit make one, the decimals of what is printed, and what it is called on a price. */
interface Sold {
  readonly per: number;
  readonly unit: string;
  readonly decimals: number;
  readonly item: string;
}

const SOLD: Readonly<Record<RatedPart, Sold>> = {
  sheet: { per: 1, unit: 'm2', decimals: 4, item: 'Sheet, waste included' },
  strip: { per: 1, unit: 'm', decimals: 3, item: 'LED strip' },
  tube: { per: 1, unit: 'm', decimals: 3, item: 'Diffuser tube' },
  wire: { per: 1, unit: 'm', decimals: 3, item: 'Wire, by the pair' },
  supply: { per: 1, unit: 'count', decimals: 0, item: 'Supplies' },
  fuse: { per: 1, unit: 'count', decimals: 0, item: 'Fuses' },
  fixing: { per: 1, unit: 'count', decimals: 0, item: 'Fixings' },
  machine: { per: 60, unit: 'h', decimals: 3, item: 'Machine' },
  bench: { per: 60, unit: 'h', decimals: 3, item: 'Bench' },
};

/** Hundredths of the currency, halves up. A hair is added so that a half that binary digits miss is still one. */
const hundredths = (amount: number): number => Math.round(amount * 100 + 1e-7);

/** The price of a sign: each line is its printed quantity times its rate, rounded; everything after that is whole hundredths. */
export function priceOf(materials: Materials, rates: Rates, benchMinutes: number): Price {
  const lines = (Object.keys(SOLD) as RatedPart[]).flatMap((part) => lineOf(part, part === 'bench' ? benchMinutes : totalOf(materials, part), rates));
  const cost = lines.reduce((sum, line) => sum + line.hundredths, 0);
  const margin = hundredths((cost / 100) * rates.margin);
  const net = cost + margin;
  const tax = hundredths((net / 100) * rates.tax);
  return { lines, cost, margin, net, tax, total: net + tax, rates };
}

function lineOf(part: RatedPart, amount: number, rates: Rates): PriceLine[] {
  const { per, unit, decimals, item } = SOLD[part];
  const quantity = Number((amount / per).toFixed(decimals));
  const rate = rates.of[part];
  return quantity === 0 ? [] : [{ part, item, quantity, unit, rate, hundredths: hundredths(quantity * rate) }];
}

/** Minutes at the bench: for every set-up, and for putting one sign together. */
export const benchMinutes = ({ setUps }: Materials, { perSetUp, assembly }: { readonly perSetUp: number; readonly assembly: number }): number => rounded(setUps * perSetUp + assembly, 'min');
