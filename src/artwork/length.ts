/** Millimetres in one px: 96 px make an inch of 25.4 mm (CSS Values 3, absolute lengths). */
export const MM_PER_PX = 25.4 / 96;

/** The font size every drawing starts with; sizes relative to the font are read by it. */
const FONT_PX = 16;

/** px in one of each unit, by its name in lower case; user units have none. */
export const PX_PER_UNIT: Readonly<Record<string, number>> = {
  '': 1, px: 1, in: 96, cm: 96 / 2.54, mm: 96 / 25.4, q: 96 / 101.6, pt: 96 / 72, pc: 16,
  em: FONT_PX, rem: FONT_PX, ex: FONT_PX / 2, ch: FONT_PX / 2,
};
const LENGTH = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)(%|[a-zA-Z]*)$/;

export interface Length {
  readonly value: number;
  /** In lower case; empty for user units. */
  readonly unit: string;
}

/** A number with an absolute unit, a font-relative one, or per cent; nothing when it is not one of these. */
export function parseLength(text: string): Length | undefined {
  const [, number, unit] = LENGTH.exec(text.trim()) ?? [];
  if (number === undefined || unit === undefined) return undefined;
  const length = { value: Number(number), unit: unit.toLowerCase() };
  return length.unit === '%' || Object.hasOwn(PX_PER_UNIT, length.unit) ? length : undefined;
}

/** User units (px); `whole` is what 100 % means. */
export function lengthInPx({ value, unit }: Length, whole: number): number {
  return unit === '%' ? (value / 100) * whole : value * PX_PER_UNIT[unit]!;
}

export const isFontRelative = ({ unit }: Length): boolean => ['em', 'rem', 'ex', 'ch'].includes(unit);
