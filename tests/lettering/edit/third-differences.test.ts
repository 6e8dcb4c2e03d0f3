import { describe, expect, it } from 'vitest';
import { keptShare, smoothingMoves, stiffnessFor } from '../../../src/lettering/edit/third-differences.ts';

const count = 600;
const ones = new Float64Array(count).fill(1);

/** Share of a wave's height that is left in the middle of a long line, where its ends are not felt. */
function left(wave: number, stiffness: number): number {
  const points = Array.from({ length: count }, (_, i) => ({ x: 0.3 * i, y: Math.cos((2 * Math.PI * (i - count / 2)) / wave) }));
  const moves = smoothingMoves(points, ones, stiffness, []);
  return 1 + moves[count / 2]!.y;
}

describe('keeps of each wave what the textbook says of the third-difference smoother, applied twice', () => {
  it.each([8, 12, 16, 24, 32, 48])('a wave of %d samples', (wave) => {
    const stiffness = stiffnessFor(16);
    const once = 1 / (1 + stiffness * (2 * Math.sin(Math.PI / wave)) ** 6);
    expect(left(wave, stiffness)).toBeCloseTo(once * (2 - once), 4);
    expect(keptShare(stiffness, (2 * Math.PI) / wave)).toBeCloseTo(once * (2 - once), 12);
  });
});

it('halves the wave its stiffness is made for, keeps twice as long ones and drops half as long ones', () => {
  for (const wave of [16, 40]) {
    expect(left(wave, stiffnessFor(wave))).toBeCloseTo(0.5, 3);
    expect(left(2 * wave, stiffnessFor(wave))).toBeGreaterThan(0.998);
    expect(Math.abs(left(wave / 2, stiffnessFor(wave)))).toBeLessThan(0.015);
  }
});

it('leaves parabolas alone, whose third differences are nothing', () => {
  const parabola = Array.from({ length: 80 }, (_, i) => ({ x: i, y: 0.01 * i * i - i }));
  for (const { x, y } of smoothingMoves(parabola, new Float64Array(80).fill(1), 500, [])) expect(Math.hypot(x, y)).toBeLessThan(1e-7);
});

it('does not move what is held, between samples too', () => {
  const wobbly = Array.from({ length: 100 }, (_, i) => ({ x: i, y: Math.sin(i) + Math.sin(i * 1.7) }));
  const moves = smoothingMoves(wobbly, new Float64Array(100).fill(1), 1000, [{ sample: 0, share: 0 }, { sample: 40, share: 0.25 }, { sample: 99, share: 0 }]);
  const sizeOf = ({ x, y }: { x: number; y: number }) => Math.hypot(x, y);
  expect(sizeOf(moves[0]!)).toBeLessThan(1e-5);
  expect(sizeOf(moves[99]!)).toBeLessThan(1e-5);
  expect(Math.abs(0.75 * moves[40]!.y + 0.25 * moves[41]!.y)).toBeLessThan(1e-5);
  expect(sizeOf(moves[41]!)).toBeGreaterThan(0.1);
});
