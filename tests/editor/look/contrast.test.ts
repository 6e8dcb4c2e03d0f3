import { describe, expect, it } from 'vitest';
import { type Theme, contrast, luminance, tokens } from './colour.ts';

const GROUNDS = ['paper', 'desk', 'bench'];
const WASHES = ['petrol-wash', 'caution-wash', 'failed-wash'];

/** What is read, and what it stands on. */
const TEXT: readonly (readonly [string, readonly string[]])[] = [
  ['ink', [...GROUNDS, ...WASHES]],
  ['grey', [...GROUNDS, ...WASHES]],
  ['petrol', [...GROUNDS, 'petrol-wash']],
  ['caution', [...GROUNDS, 'caution-wash']],
  ['failed', [...GROUNDS, 'failed-wash']],
  ['on-petrol', ['petrol']],
];
/** What must be seen to be used or understood: edges of controls, focus, drawn lines. */
const DRAWN: readonly (readonly [string, readonly string[]])[] = [
  ['edge', [...GROUNDS, ...WASHES]],
  ['petrol', [...GROUNDS, ...WASHES]],
  ['groove', GROUNDS],
  ['amber', [...GROUNDS, 'groove']],
];

const ALL = tokens();
const pairs = (uses: typeof TEXT) => uses.flatMap(([front, grounds]) => grounds.flatMap((ground) => (['light', 'dark'] as const).map((theme) => ({ front, ground, theme }))));
const measured = ({ front, ground, theme }: { front: string; ground: string; theme: Theme }) => contrast(ALL.get(front)![theme], ALL.get(ground)![theme]);

describe('contrast', () => {
  it('is measured as WCAG 2.2 defines it: black on white 21, equal colours 1, middle grey as its table has it', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
    expect(contrast('#777777', '#777777')).toBe(1);
    // Well known as the lightest grey that fails, and the darkest that passes, 4.5 on white.
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
    expect(contrast('#767676', '#ffffff')).toBeGreaterThan(4.5);
    expect(luminance('#ff0000')).toBeCloseTo(0.2126, 9);
  });

  it.each(pairs(TEXT))('of $front text on $ground is at least 4.5 in the $theme theme', (pair) => {
    expect(measured(pair)).toBeGreaterThanOrEqual(4.5);
  });

  it.each(pairs(DRAWN))('of $front lines on $ground is at least 3 in the $theme theme', (pair) => {
    expect(measured(pair)).toBeGreaterThanOrEqual(3);
  });
});
