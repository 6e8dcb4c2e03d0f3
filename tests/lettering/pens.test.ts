import { describe, expect, it } from 'vitest';
import { polylinePath } from '../../src/geometry/index.ts';
import { traceOutlines } from '../../src/lettering/index.ts';
import { CORPUS } from './faces/corpus.ts';
import { openFace } from './faces/face.ts';
import { penStrokes } from './faces/pen-strokes.ts';

const trace = (outlines: Parameters<typeof traceOutlines>[0]) => traceOutlines(outlines, {}, () => undefined).strokes;

it.each([['great-vibes', 'd'], ['dancing-script', 'N'], ['pacifico', 'x']])('a pen that grows wider into the stroke it meets goes on, as in %s, %s', (name, letter) => {
  const { hand } = CORPUS.find((face) => face.name === name)!;
  expect(penStrokes(hand, letter)).toContain(trace(openFace(name).set(letter).map(({ outline }) => outline)).length);
});

it.each(['a', 'q', 'z', 'N'])('answers that differ little still differ: sacramento, %s', (letter) => {
  const { hand } = CORPUS.find(({ name }) => name === 'sacramento')!;
  expect(penStrokes(hand, letter)).toContain(trace(openFace('sacramento').set(letter).map(({ outline }) => outline)).length);
});

/** Bars of 200 by 6 over one middle, as far apart as can be. */
const star = (bars: number) => Array.from({ length: bars }, (_, k) => {
  const [c, s] = [Math.cos((Math.PI * k) / bars + 0.1), Math.sin((Math.PI * k) / bars + 0.1)];
  const corners = ([[-100, -3], [100, -3], [100, 3], [-100, 3]] as const).map(([x, y]) => ({ x: c * x - s * y, y: s * x + c * y }));
  return { paths: [polylinePath(corners, true)], fillRule: 'nonzero' as const };
});

describe('a junction of more arms than can all be tried', () => {
  it.each([5, 6, 7])('%d bars make as many strokes, each from end to end', (bars) => {
    for (const { path } of trace(star(bars))) {
      const end = path.segments.at(-1)!.end;
      expect(Math.hypot(end.x + path.start.x, end.y + path.start.y)).toBeLessThan(0.1);
    }
    expect(trace(star(bars)).length).toBe(bars);
  });
});
