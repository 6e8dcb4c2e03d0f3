import { traceOutlines } from '../../src/lettering/index.ts';
import { invert, rotation, scaling, type Affine, applyToPath } from '../../src/geometry/index.ts';
import * as truth from '../lettering/truth/index.ts';
import type { Comparison, Errors, Lines, Truth } from '../lettering/truth/index.ts';

/** Limits in percent of the width; what is absent is not judged. */
interface Gate {
  readonly mean?: number;
  readonly p95?: number;
  readonly max?: number;
  readonly ends?: number;
  /** Judge ends too, or only what is a width away from them. */
  readonly whole?: boolean;
  /** Judge the distances of this true stroke only. */
  readonly stroke?: number;
}

const trace = (shape: Truth) => traceOutlines(shape.outlines, {}, () => undefined);

/** One line per gate: `ok` or `MISSED`, the shape, what is asked, what is reached. */
export function* tracingRows(): Generator<string> {
  const gates: readonly (readonly [string, readonly Truth[], Gate])[] = [
    ['Plain shapes', [truth.stadium(), truth.rectangle()], { max: 0.1, ends: 1 }],
    ['', [truth.ellipse()], { max: 0.1 }],
    ['', [truth.annulus()], { max: 0.5 }],
    ['', [truth.uprightS(), truth.taper(), truth.arch(), truth.wave(21), truth.wave(22)], { mean: 0.25, p95: 0.5, max: 1, ends: 1 }],
    ['', [truth.flatS(), truth.swash()], { mean: 0.25, p95: 0.5, max: 1, ends: 1 }],
    ['Ends', truth.endShapes(), { max: 1, ends: 1 }],
    ['Crossings', [25, 35, 45, 60, 90].flatMap((degrees) => [truth.crossing(degrees), truth.crossing(degrees, 6)]), { max: 0.5, ends: 1 }],
    ['', [35, 50, 65, 80].flatMap((degrees) => [truth.bentCrossing(degrees, degrees), truth.bentCrossing(degrees, degrees, false)]), { max: 1, ends: 1 }],
    ['Beyond: shallow crossings', [10, 15, 20].flatMap((degrees) => [truth.crossing(degrees), truth.crossing(degrees, 6)]), { max: 1, ends: 1 }],
    ['', [20, 25, 30].map((degrees) => truth.bentCrossing(degrees, degrees)), { max: 2, ends: 1 }],
    ['T: the bar\'s bump', [90, 60, 45].flatMap((degrees) => [truth.tee(degrees), truth.tee(degrees, 6)]), { max: 0.5, stroke: 0 }],
    ['', [truth.tee(30), truth.tee(30, 6)], { max: 6, stroke: 0 }],
    ['', [truth.bentTee()], { max: 1, stroke: 0 }],
    ['Loops', truth.loopShapes(), { max: 1, ends: 1 }],
    ['Word', [truth.word(), truth.word(61)], { mean: 0.4, p95: 1.2, max: 4 }],
    ['', [truth.noisy(truth.word(), 0.01)], { p95: 1.5, max: 5 }],
    ['', [truth.noisy(truth.word(), 0.03)], { p95: 2.5, max: 6 }],
    ['', [truth.noisy(truth.word(), 0.05)], { p95: 4, max: 8 }],
    ['Beyond: tangential arches', truth.archShapes(), { p95: 2, max: 5, ends: 2 }],
    ['Beyond: other joints', truth.jointShapes(), { p95: 2, max: 5 }],
    ['Small shapes', truth.smallShapes(), {}],
    ['No strokes', truth.strokeless(), {}],
  ];
  for (const [title, shapes, gate] of gates) {
    if (title) yield `-- ${title}`;
    for (const shape of shapes) yield rowOf(shape, gate);
  }
  yield '-- Invariance: strokes of the same word after a change, against those before it (gate: same strokes, max 1 %)';
  yield* invarianceRows(truth.word());
  for (const shape of [truth.letterN(), truth.letterM(), truth.letterB(), truth.loopE(), truth.crossing(25)]) yield* turnedRows(shape);
}

/** Milliseconds for more and more words, the best of three, and the ratio to the growth of the work itself. */
export function* timeRows(): Generator<string> {
  yield '-- Time, best of three (gate: grows no faster than n log n)';
  const time = (words: number) => {
    const { outlines } = truth.phrase(words);
    return Math.min(...[1, 2, 3].map(() => {
      const started = performance.now();
      traceOutlines(outlines, {}, () => undefined);
      return performance.now() - started;
    }));
  };
  time(1);
  const one = time(1);
  yield `1 word (650 mm of ${truth.W} mm wide strokes, 7 crossings): ${one.toFixed(0)} ms`;
  for (const words of [5, 20]) {
    const took = time(words);
    yield `${words} words: ${took.toFixed(0)} ms, ${(took / one).toFixed(1)} times one`;
  }
}

export function rowOf(shape: Truth, gate: Gate): string {
  try {
    const { regions, ...lines } = trace(shape);
    const found = truth.compare(shape, lines);
    const failed = missed(found, gate, shape);
    return `${failed.length ? `MISSED ${failed.join(' ')}` : 'ok'}`.padEnd(20) + ` ${shape.name.padEnd(28)} | ${sayGate(gate).padEnd(34)} | ${sayFound(found, gate, shape)}${regions.length ? `, ${regions.length} left as regions` : ''}`;
  } catch (error) {
    return `${'MISSED'.padEnd(20)} ${shape.name.padEnd(28)} | ${sayGate(gate).padEnd(34)} | threw: ${String(error)}`;
  }
}

const judged = (found: Comparison, { whole, stroke }: Gate): Errors => (stroke !== undefined ? found.byStroke[stroke]! : whole ? found.whole : found.inner);

function missed(found: Comparison, gate: Gate, shape: Truth): string[] {
  const errors = judged(found, gate);
  const over = (['mean', 'p95', 'max'] as const).filter((key) => errors[key] > (gate[key] ?? Infinity));
  const wrong = [...over, ...((found.ends ?? 0) > (gate.ends ?? Infinity) ? ['ends'] : []), ...(found.kinks ? ['kink'] : [])];
  if (!found.rightCount) wrong.push('count');
  else if (shape.counts.length === 1 && !found.matched) wrong.push('course');
  return wrong;
}

const say = (value: number) => value.toFixed(value < 1 ? 2 : 1);

function sayGate(gate: Gate): string {
  return (['mean', 'p95', 'max', 'ends'] as const).flatMap((key) => (gate[key] === undefined ? [] : [`${key} ${gate[key]}`])).join(', ') || 'strokes only';
}

function sayFound(found: Comparison, gate: Gate, { counts, strokes }: Truth): string {
  const { mean, p95, max } = judged(found, gate);
  const figures = strokes.length === 0 ? [] : [`mean ${say(mean)}`, `p95 ${say(p95)}`, `max ${say(max)}`, `ends ${found.ends === undefined ? '-' : say(found.ends)}`, ...(found.leastRadius < 100 ? [`least radius ${say(found.leastRadius)} w`] : [])];
  return [`${found.count} strokes (of ${counts.join(' or ')})`, ...figures, ...(found.kinks ? [`${found.kinks} kinks to ${say(found.worstKink)} degrees`] : [])].join(', ');
}

/** The strokes that a change of the outlines gives, brought back, as seen from those of the unchanged ones. */
function against(shape: Truth, base: Lines, change: Affine): Comparison {
  const back = invert(change)!;
  const { strokes } = traceOutlines(truth.movedOutlines(shape.outlines, change), {}, () => undefined);
  return seenFrom(base, { strokes: strokes.map(({ path }) => ({ path: applyToPath(back, path) })) }, shape.width);
}

const seenFrom = (base: Lines, other: Lines, width: number): Comparison =>
  truth.compare({ name: '', width, outlines: [], strokes: base.strokes.map(({ path }) => ({ path, ends: path.closed ? [] : ['free', 'free'] })), counts: [base.strokes.length] }, other);

const sayChange = (says: string, found: Comparison): string => {
  const good = found.rightCount && found.matched && found.whole.max <= 1;
  return `${good ? 'ok' : 'MISSED'}`.padEnd(20) + ` ${says.padEnd(28)} | ${'same strokes, max 1'.padEnd(34)} | ${found.count} strokes${found.matched ? '' : ', not the same'}, mean ${say(found.whole.mean)}, p95 ${say(found.whole.p95)}, max ${say(found.whole.max)}`;
};

const mirror: Affine = [-1, 0, 0, 1, 0, 0];

function* invarianceRows(shape: Truth): Generator<string> {
  const base = trace(shape);
  for (let degrees = 10; degrees <= 90; degrees += 10) yield sayChange(`word turned ${degrees}`, against(shape, base, rotation(degrees)));
  yield sayChange('word mirrored', against(shape, base, mirror));
  for (const factor of [0.1, 0.5, 2, 10]) yield sayChange(`word scaled ${factor}`, against(shape, base, scaling(factor)));
  const other = (outlines: Truth['outlines']) => seenFrom(base, traceOutlines(outlines, {}, () => undefined), shape.width);
  yield sayChange('word, doubled sampling', other(truth.doubled(shape.outlines)));
  yield sayChange('word, halved sampling', other(truth.halved(shape.outlines)));
}

function* turnedRows(shape: Truth): Generator<string> {
  const base = trace(shape);
  const found = [15, 30, 45, 60, 75].map((degrees) => against(shape, base, rotation(degrees))).concat(against(shape, base, mirror));
  const worst = found.reduce((a, b) => (!b.matched || (a.matched && b.whole.max > a.whole.max) ? b : a));
  yield sayChange(`${shape.name} turned, mirrored`, worst);
}
