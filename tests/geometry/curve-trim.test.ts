import { describe, expect, it } from 'vitest';
import { type Path, pathLength, trimPath } from '../../src/geometry/index.ts';

const arch: Path = {
  start: { x: 0, y: 0 },
  segments: [
    { kind: 'line', end: { x: 0, y: 30 } },
    { kind: 'arc', end: { x: 40, y: 30 }, centre: { x: 20, y: 30 }, clockwise: true },
    { kind: 'cubic', control1: { x: 40, y: 10 }, control2: { x: 60, y: 0 }, end: { x: 90, y: 0 } },
  ],
  closed: false,
};

describe('trimming an open path', () => {
  it.each([0.5, 12, 29.9, 31, 60])('takes %d mm off each end, along the path', (amount) => {
    const shorter = trimPath(arch, amount)!;
    expect(pathLength(shorter)).toBeCloseTo(pathLength(arch) - 2 * amount, 6);
  });

  it('leaves the ends on the path', () => {
    expect(trimPath(arch, 12)!.start).toEqual({ x: 0, y: 12 });
    const { x, y } = trimPath(arch, 30 + 5 * Math.PI)!.start;
    expect([x, y]).toEqual([expect.closeTo(20 - 20 * Math.SQRT1_2, 9), expect.closeTo(30 + 20 * Math.SQRT1_2, 9)]);
  });

  it('leaves nothing of a path that is not longer than what is taken', () => {
    expect(trimPath(arch, pathLength(arch) / 2 + 1e-9)).toBeUndefined();
    expect(trimPath({ start: { x: 1, y: 1 }, segments: [], closed: false }, 1)).toBeUndefined();
  });

  it('changes nothing when asked for nothing', () => {
    expect(trimPath(arch, 0)).toEqual(arch);
  });
});
