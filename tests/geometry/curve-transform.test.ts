import { describe, expect, it } from 'vitest';
import {
  type Affine, type Path, applyToPath, applyToPoint, boxOfPoints, boxesOverlap, determinant, distance, growBox, identity, invert, lerp, multiply,
  normalize, pathLength, rotate, rotation, scaling, skewX, skewY, translation, unionBoxes,
} from '../../src/geometry/index.ts';
import { seeded } from '../support/random.ts';
import { asPolyline, twoWayDistance } from './curve-shapes.ts';

describe('points', () => {
  it('turn by quarter turns without rounding', () => {
    const turned = [90, 180, -90, 450].map((degrees) => rotate({ x: 3, y: 4 }, degrees));
    expect(turned).toEqual([{ x: -4, y: 3 }, { x: -3, y: -4 }, { x: 4, y: -3 }, { x: -4, y: 3 }]);
  });

  it('keep zero, tiny and huge vectors meaningful when normalized', () => {
    expect(normalize({ x: 0, y: 0 })).toEqual({ x: 0, y: 0 });
    for (const size of [1e-308, 1, 1e307]) {
      const unit = normalize({ x: 3 * size, y: 4 * size });
      expect(unit.x).toBeCloseTo(0.6, 9);
      expect(unit.y).toBeCloseTo(0.8, 9);
    }
  });

  it('are met exactly at both ends of an interpolation', () => {
    const [p, q] = [{ x: 0.1, y: 1e9 }, { x: 0.3, y: -0.7 }];
    expect([lerp(p, q, 0), lerp(p, q, 1)]).toEqual([p, q]);
  });
});

describe('transforms', () => {
  const random = seeded(4);
  const some = (): Affine => [random() - 0.5, random() * 3, random() - 2, random() * 2, random() * 100, random() * 100];

  // SVG 2, coordinate systems: matrix(a b c d e f) and the order in which nested transforms apply.
  it('map points as SVG writes its matrix', () => {
    expect(applyToPoint([2, 3, 5, 7, 11, 13], { x: 1, y: 10 })).toEqual({ x: 63, y: 86 });
    expect(applyToPoint(multiply(translation(10, 0), rotation(90)), { x: 1, y: 0 })).toEqual({ x: 10, y: 1 });
    expect(applyToPoint(multiply(rotation(90), translation(10, 0)), { x: 1, y: 0 })).toEqual({ x: 0, y: 11 });
  });

  it('skew by the tangent of the angle', () => {
    expect(applyToPoint(skewX(45), { x: 1, y: 2 }).x).toBeCloseTo(3, 12);
    expect(applyToPoint(skewY(45), { x: 1, y: 2 }).y).toBeCloseTo(3, 12);
  });

  it('are undone by their inverse', () => {
    for (let i = 0; i < 100; i++) {
      const m = some();
      const back = invert(m)!;
      const p = { x: random() * 1000, y: random() * 1000 };
      expect(distance(applyToPoint(back, applyToPoint(m, p)), p)).toBeLessThan(1e-8 / Math.abs(determinant(m)));
    }
  });

  it('have no inverse when they flatten the plane', () => {
    expect(invert(scaling(1, 0))).toBeUndefined();
    expect(invert([1, 2, 2, 4, 0, 0])).toBeUndefined();
    expect(invert([0.1, 0.3, 0.1, 0.3, 5, 5])).toBeUndefined();
    expect(invert(scaling(1e-9))).toBeDefined();
  });
});

describe('transforming a path', () => {
  const path: Path = {
    start: { x: 0, y: 0 },
    segments: [
      { kind: 'arc', end: { x: 20, y: 0 }, centre: { x: 10, y: 0 }, clockwise: true },
      { kind: 'cubic', control1: { x: 30, y: 0 }, control2: { x: 30, y: 10 }, end: { x: 40, y: 10 } },
      { kind: 'line', end: { x: 0, y: 0 } },
    ],
    closed: true,
  };

  it('keeps arcs under a similarity, and turns them round when it mirrors', () => {
    const mirrored = applyToPath(multiply(rotation(30), scaling(2, -2)), path);
    expect(mirrored.segments[0]).toMatchObject({ kind: 'arc', clockwise: false });
    expect(pathLength(mirrored)).toBeCloseTo(2 * pathLength(path), 9);
    expect(applyToPath(identity, path)).toEqual(path);
  });

  it.each<[string, Affine]>([['a stretch', scaling(3, 0.5)], ['a skew', skewX(40)], ['a general matrix', [1, 2, -3, 4, 5, 6]]])('follows the transformed arc under %s', (_, m) => {
    const result = applyToPath(m, path, 1e-4);
    expect(result.segments.some(({ kind }) => kind === 'arc')).toBe(false);
    expect(result.segments.at(-1)!.end).toEqual(result.start);
    expect(twoWayDistance(asPolyline(result), asPolyline(path).map((p) => applyToPoint(m, p)))).toBeLessThan(1.6e-4);
  });
});

describe('boxes', () => {
  it('are undefined around nothing', () => {
    expect(boxOfPoints([])).toBeUndefined();
    expect(unionBoxes([undefined])).toBeUndefined();
  });

  it('unite, grow and shrink to no less than their centre', () => {
    const [a, b] = [boxOfPoints([{ x: 0, y: 1 }])!, boxOfPoints([{ x: 4, y: -1 }, { x: 2, y: 3 }])!];
    expect(unionBoxes([a, undefined, b])).toEqual({ minX: 0, minY: -1, maxX: 4, maxY: 3 });
    expect(growBox(b, 1)).toEqual({ minX: 1, minY: -2, maxX: 5, maxY: 4 });
    expect(growBox(b, -10)).toEqual({ minX: 3, minY: 1, maxX: 3, maxY: 1 });
  });

  it('overlap when they touch', () => {
    const box = (minX: number) => ({ minX, minY: 0, maxX: minX + 1, maxY: 1 });
    expect([boxesOverlap(box(0), box(1)), boxesOverlap(box(0), box(1.01))]).toEqual([true, false]);
  });
});
