import { readFileSync } from 'node:fs';

export type Theme = 'light' | 'dark';

/** The colour tokens of the page as they are written, by name without dashes. */
export function tokens(): ReadonlyMap<string, Readonly<Record<Theme, string>>> {
  const text = readFileSync(new URL('../../../src/editor/look/tokens.css', import.meta.url), 'utf8');
  const found = [...text.matchAll(/--([\w-]+):\s*light-dark\(\s*(#[0-9a-f]{6})\s*,\s*(#[0-9a-f]{6})\s*\)/g)];
  return new Map(found.map(([, name, light, dark]) => [name!, { light: light!, dark: dark! }]));
}

/** Relative luminance as WCAG 2.2 defines it: sRGB made linear, weighed 0.2126, 0.7152, 0.0722. */
export function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => linear(Number.parseInt(hex.slice(at, at + 2), 16) / 255)) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

const linear = (c: number): number => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);

/** Contrast ratio as WCAG 2.2 defines it, from 1 to 21. */
export function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}
