/** One line of a ruler: the value it stands at, mm, and its words where it has any. */
export interface Tick {
  readonly value: number;
  readonly kind: 'labelled' | 'half' | 'small';
  readonly label?: string;
}

/** Pixels a labelled step takes at least, so that labels have room; and a small one, so that lines stay apart. */
const LABELLED = 64;
const SMALL = 5;

/** Small steps that divide a labelled one of mantissa 1, 2 or 5, all of them 1, 2 or 5 too. */
const PARTS: Readonly<Record<number, readonly number[]>> = { 1: [10, 5, 2], 2: [10, 4, 2], 5: [10, 5] };

/** The least number 1, 2 or 5 times a power of ten that takes `pixels` or more, as mantissa and exponent. */
export function roundStep(scale: number, pixels: number): { readonly mantissa: 1 | 2 | 5; readonly exponent: number } {
  const least = pixels / scale;
  const exponent = Math.floor(Math.log10(least) + 1e-12);
  const rest = least / 10 ** exponent - 1e-9;
  if (rest <= 1) return { mantissa: 1, exponent };
  if (rest <= 2) return { mantissa: 2, exponent };
  return rest <= 5 ? { mantissa: 5, exponent } : { mantissa: 1, exponent: exponent + 1 };
}

/** The distance of labels on a ruler, mm. */
export function labelledStep(scale: number): number {
  const { mantissa, exponent } = roundStep(scale, LABELLED);
  return times(mantissa, exponent);
}

/** Decimals that tell places apart at this scale: those of a labelled step, and one more. */
export function decimalsAt(scale: number): number {
  return Math.min(4, Math.max(1, -roundStep(scale, LABELLED).exponent + 1));
}

/** The lines of a ruler from one value to another, in mm, at so many pixels per mm. Labels carry no unit. */
export function ticks(from: number, to: number, scale: number): Tick[] {
  const { mantissa, exponent } = roundStep(scale, LABELLED);
  const step = times(mantissa, exponent);
  const parts = PARTS[mantissa]!.find((count) => (step / count) * scale >= SMALL) ?? 1;
  const list: Tick[] = [];
  for (let index = Math.ceil((from / step) * parts); index <= Math.floor((to / step) * parts); index++) {
    const value = (index * step) / parts;
    if (index % parts === 0) list.push({ value: times((index / parts) * mantissa, exponent), kind: 'labelled', label: words((index / parts) * mantissa, exponent) });
    else list.push({ value, kind: (index * 2) % parts === 0 ? 'half' : 'small' });
  }
  return list;
}

/** Divided where that is exact, so that 3 * 0.1 is 0.3. */
const times = (whole: number, exponent: number): number => (exponent < 0 ? whole / 10 ** -exponent : whole * 10 ** exponent);

const words = (whole: number, exponent: number): string => (whole === 0 ? '0' : times(whole, exponent).toFixed(Math.max(0, -exponent)));
