import { describe, expect, it } from 'vitest';
import { distance, flattenPath, makeRegionIndex, type Region, regionArea, samplePath } from '../../src/geometry/index.ts';
import * as truth from './truth/index.ts';

const { W } = truth;
const regionOf = ({ outlines }: truth.Truth): Region => ({ loops: outlines.flatMap(({ paths }) => paths.map((path) => flattenPath(path, 1e-4))) });

describe('outlines swept from known curves', () => {
  it.each([truth.uprightS(), truth.taper(), truth.arch(), truth.swash(), truth.wave(21)])('$name: the widest disc about each place of the line has the pen\'s radius', (shape) => {
    const index = makeRegionIndex(regionOf(shape));
    const pens: Record<string, truth.WidthLaw> = { 'S of uneven width': truth.uneven(W, 0.2, 1), taper: truth.tapered(14, 6), 'arch of uneven width': truth.uneven(W, 0.2, 3), 'wave 21': truth.uneven(W, 0.2, 21) };
    const law = pens[shape.name] ?? ((share) => 4 + 8 * Math.sin(Math.PI * share) ** 2);
    const samples = samplePath(shape.strokes[0]!.path, 1.7);
    const worst = Math.max(...samples.map(({ point, distance: along }) => Math.abs(index.distanceToBoundary(point) - law(along / samples.at(-1)!.distance) / 2)));
    expect(worst).toBeLessThan(0.0015 * W);
  });

  it('a stadium has the area and the sides it must have', () => {
    expect(Math.abs(regionArea(regionOf(truth.stadium())) - (100 * W + (Math.PI * W * W) / 4))).toBeLessThan((2 / 3) * 0.001 * W * Math.PI * W);
    expect(regionOf(truth.rectangle()).loops.map((loop) => loop.length)).toEqual([4]);
  });

  it('every stroke that joins another ends on its centre line', () => {
    for (const { strokes, name } of [truth.tee(60), truth.bentTee(), truth.letterY(), truth.letterK(), ...truth.archShapes(), truth.letterB(), truth.letterP(), truth.tippedB(), truth.connected(6), truth.word()]) {
      strokes.forEach(({ path, ends }, i) => ends.forEach((end, at) => {
        if (end !== 'joins') return;
        const place = samplePath(path, 1).at(-at)!.point;
        const others = strokes.filter((_, k) => k !== i).flatMap((other) => samplePath(other.path, 0.1).map(({ point }) => distance(point, place)));
        expect(Math.min(...others), `${name}, stroke ${i}, end ${at}`).toBeLessThan(0.2);
      }));
    }
  });

  it('one connected outline each, and the word crosses itself seven times', () => {
    for (const shape of [...truth.plainShapes(), ...truth.archShapes(), ...truth.loopShapes(), truth.crossing(10), truth.bentCrossing(25), truth.word()])
      expect(regionOf(shape).loops.filter((loop) => regionArea({ loops: [loop] }) > 0).length, shape.name).toBe(1);
    expect(truth.crossings(truth.word())).toBe(7);
    expect(truth.crossings(truth.loopE())).toBe(1);
    expect(truth.crossings(truth.bentCrossing(35))).toBe(1);
  });
});
