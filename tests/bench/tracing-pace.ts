import { expect, it } from 'vitest';
import type { Outline } from '../../src/artwork/artwork.ts';
import { boxOfPoints, scaling, translation } from '../../src/geometry/index.ts';
import { traceOutlines, type Tracing } from '../../src/lettering/index.ts';
import { openFace } from '../lettering/faces/face.ts';
import * as truth from '../lettering/truth/index.ts';
import { rasterStrokes } from './raster-strokes.ts';
import { stages } from './tracing-stages.ts';

/** Prints how the tracing keeps pace, as ratios within one run. Nothing here fails by being slow. FACE=name takes another typeface. */
const PHRASES = ['Warm bread and apple pie by six', 'Seven smoked oysters for lunch', 'Plum jam & quince on rye toasts', 'Ring twice for the night bakers'] as const;
const METRES_MM = 2000;
const PIXELS = [1, 0.5, 0.25, 0.1] as const;

const say = (line: string) => { console.log(line); };
const trace = (outlines: readonly Outline[], tolerance?: number): Tracing => traceOutlines(outlines, tolerance === undefined ? {} : { tolerance }, () => undefined);

/** Least milliseconds of some runs, after one to warm up where there are several. */
function time(runs: number, act: () => unknown): number {
  if (runs > 1) act();
  return Math.min(...Array.from({ length: runs }, () => {
    const started = performance.now();
    act();
    return performance.now() - started;
  }));
}

/** A phrase two metres wide. */
function sign(text: string): Outline[] {
  const outlines = openFace(process.env['FACE'] ?? 'dancing-script').set(text).map(({ outline }) => outline);
  const { minX, maxX } = boxOfPoints(outlines.flatMap(({ paths }) => paths.flatMap(({ start, segments }) => [start, ...segments.map(({ end }) => end)])))!;
  return truth.movedOutlines(outlines, scaling(METRES_MM / (maxX - minX)));
}

const letters = (text: string) => text.replace(/[^a-z]/gi, '').length;
const pointsOf = (outlines: readonly Outline[]) => outlines.reduce((sum, { paths }) => sum + paths.reduce((all, { segments }) => all + segments.length, 0), 0);

function usualWidth({ strokes }: Tracing): number {
  const widths = strokes.flatMap((stroke) => stroke.widths.map(({ width }) => width)).sort((a, b) => a - b);
  return widths[widths.length >> 1]!;
}

const errors = ({ inner: { mean, p95, max } }: truth.Comparison) => `mean ${mean.toFixed(2)} p95 ${p95.toFixed(2)} max ${max.toFixed(1)}`;

it('against thinning of a raster', () => {
  const [phrase] = PHRASES;
  const outlines = sign(phrase);
  const width = usualWidth(trace(outlines));
  const as = (shape: truth.Truth) => truth.moved(shape, scaling(width / shape.width));
  const [plain, word] = [as(truth.uprightS()), as(truth.word())];
  say(`"${phrase}", ${letters(phrase)} letters, ${METRES_MM} mm wide, strokes about ${width.toFixed(1)} mm wide; errors in percent of the width, a width from ends, on strokes of that width whose centre line is known`);
  const ours = time(3, () => trace(outlines));
  const of = (strokes: (given: readonly Outline[]) => truth.Lines) => [plain, word].map((shape) => truth.compare(shape, strokes(shape.outlines))) as [truth.Comparison, truth.Comparison];
  const own = of(trace);
  say(`${'ours'.padEnd(28)} time 1.00 | one stroke: ${errors(own[0])} | word with crossings: ${errors(own[1])}`);
  const rows = PIXELS.map((pixel) => {
    const took = time(pixel < 0.25 ? 1 : 2, () => rasterStrokes(outlines, pixel));
    const found = of((given) => ({ strokes: rasterStrokes(given, pixel) }));
    say(`${`thinning, pixels of ${pixel} mm`.padEnd(28)} time ${(took / ours).toFixed(2)} | one stroke: ${errors(found[0])} | word with crossings: ${errors(found[1])}`);
    return { pixel, ratio: took / ours, found };
  });
  for (const [i, says] of ['one stroke', 'the word'].entries()) {
    const equal = rows.find(({ found }) => found[i]!.inner.mean <= own[i]!.inner.mean && found[i]!.inner.p95 <= own[i]!.inner.p95);
    say(`on ${says} ${equal ? `pixels of ${equal.pixel} mm are as right as ours, at ${equal.ratio.toFixed(1)} times the time` : `no pixel down to ${PIXELS.at(-1)!} mm is as right as ours; that one takes ${rows.at(-1)!.ratio.toFixed(1)} times the time`}`);
  }
  expect(rows.length).toBe(PIXELS.length);
}, 600_000);

it('growth from one phrase to twenty', () => {
  const signs = PHRASES.map(sign);
  const rows = (count: number) => Array.from({ length: count }, (_, i) => truth.movedOutlines(signs[i % signs.length]!, translation(0, -500 * i))).flat();
  let first = 0;
  for (const count of [1, 2, 5, 10, 20]) {
    const outlines = rows(count);
    const each = time(count < 5 ? 3 : 2, () => trace(outlines)) / pointsOf(outlines);
    first ||= each;
    say(`${count} phrases, ${pointsOf(outlines)} outline points: time for each point ${(each / first).toFixed(2)} of that of one phrase`);
  }
}, 600_000);

it('where the time goes', () => {
  const outlines = sign(PHRASES[0]);
  const whole = trace(outlines, 0.01);
  const width = usualWidth(whole);
  const runs = [1, 2, 3, 4].map(() => stages(outlines, 0.01, width)).slice(1);
  const known = new Set(whole.strokes.map(({ path }) => JSON.stringify(path)));
  expect(runs[0]!.paths.every((path) => known.has(JSON.stringify(path)))).toBe(true);
  const least = new Map([...runs[0]!.times.keys()].map((stage) => [stage, Math.min(...runs.map(({ times }) => times.get(stage)!))]));
  const sum = [...least.values()].reduce((a, b) => a + b);
  say(`shares of one phrase's time: ${[...least].map(([stage, ms]) => `${stage} ${((100 * ms) / sum).toFixed(1)} %`).join(', ')}`);
}, 600_000);
