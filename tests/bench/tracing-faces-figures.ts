import { afterAll, it } from 'vitest';
import { type Tracing, traceOutlines } from '../../src/lettering/index.ts';
import { CHARACTERS, CORPUS, type CorpusFace, PHRASES } from '../lettering/faces/corpus.ts';
import { type Face, openFace } from '../lettering/faces/face.ts';
import { judge, type Judgement } from '../lettering/faces/judge.ts';
import { penStrokes } from '../lettering/faces/pen-strokes.ts';
import { errorsOf } from '../lettering/truth/compare.ts';

/** Prints, typeface by typeface, what the tracing makes of letters, digits and phrases. Asserts nothing. FACE=name prints one alone. */
const only = process.env['FACE'];
const say = (line: string) => console.log(line);

const trace = (face: Face, text: string): Tracing => traceOutlines(face.set(text).map(({ outline }) => outline), {}, () => undefined);

/** The judgement, or what was thrown. */
function tried(face: Face, text: string): Judgement | string {
  try {
    return judge(trace(face, text));
  } catch (error) {
    return String(error);
  }
}

function sayCharacters(face: Face, { hand }: CorpusFace): void {
  const found = CHARACTERS.map((character) => ({ character, judged: tried(face, character) }));
  const good = found.flatMap(({ judged }) => (typeof judged === 'string' ? [] : [judged]));
  const wrong = found.flatMap(({ character, judged }) => {
    if (typeof judged === 'string') return [`${character} threw`];
    const right = penStrokes(hand, character);
    return right.includes(judged.strokes) ? [] : [`${character} ${judged.strokes} (${right.join('/')})`];
  });
  say(`  ${CHARACTERS.length - wrong.length} of ${CHARACTERS.length} characters have a pen's number of strokes${wrong.length ? `; not: ${wrong.join(', ')}` : ''}`);
  const faulty = found.flatMap(({ character, judged }) => (typeof judged !== 'string' && judged.spurs + judged.kinks > 0 ? [character] : []));
  say(`  ${sayJudgement(good)}${faulty.length ? `; spurs or kinks in ${faulty.join(' ')}` : ''}`);
}

function sayJudgement(all: readonly Judgement[]): string {
  const sum = (of: (one: Judgement) => number) => all.reduce((total, one) => total + of(one), 0);
  const [ends, sides] = [errorsOf(all.flatMap((one) => one.ends)), errorsOf(all.flatMap((one) => one.sides))];
  const far = all.flatMap((one) => one.ends).filter((gap) => gap > 5).length;
  return `${sum(({ strokes }) => strokes)} strokes, ${sum(({ spurs }) => spurs)} spurs, ${sum(({ kinks }) => kinks)} kinks, ends off mean ${ends.mean.toFixed(1)} p95 ${ends.p95.toFixed(1)} max ${ends.max.toFixed(0)} % (${far} over 5 %), `
    + `sides off mean ${sides.mean.toFixed(1)} p95 ${sides.p95.toFixed(1)} %, ${sum(({ unsure }) => unsure)} unsure, ${sum(({ regions }) => regions)} left as regions`;
}

/** Strokes surer than this are settled. */
const UNRESOLVED = 0.1;

/** Strokes that hardly know which way they go, and the places they doubt. */
const spots = ({ strokes }: Tracing) => ({ unresolved: strokes.filter(({ confidence }) => confidence < UNRESOLVED).length, doubts: new Set(strokes.flatMap(({ doubts }) => doubts.map(({ at }) => `${at.x} ${at.y}`))).size });

interface Row {
  readonly name: string;
  readonly letters: number;
  readonly strokes: number;
  readonly wrong: number;
  readonly kinks: number;
  readonly ends: readonly number[];
  readonly unresolved: number;
  readonly doubts: number;
  /** Characters with a part that no stroke covers. */
  readonly uncovered: string;
}

/** One line for all of a typeface: its characters' counts, its phrases' strokes. */
function rowOf(face: Face, { name, hand, heldOut }: CorpusFace): Row {
  const characters = CHARACTERS.map((character) => ({ character, judged: tried(face, character) }));
  const phrases = PHRASES.map((phrase) => trace(face, phrase));
  const bare = CHARACTERS.filter((character) => trace(face, character).uncovered.length > 0);
  const judged = phrases.map(judge);
  const sum = (of: (tracing: Tracing) => number) => phrases.reduce((total, one) => total + of(one), 0);
  return {
    name: `${name}${heldOut ? ' (held out)' : ''}`,
    letters: PHRASES.reduce((total, phrase) => total + phrase.replaceAll(' ', '').length, 0),
    strokes: sum(({ strokes }) => strokes.length),
    wrong: characters.filter(({ character, judged: one }) => typeof one === 'string' || !penStrokes(hand, character).includes(one.strokes)).length,
    kinks: judged.reduce((total, { kinks }) => total + kinks, 0) + characters.reduce((total, { judged: one }) => total + (typeof one === 'string' ? 0 : one.kinks), 0),
    ends: judged.flatMap(({ ends }) => ends),
    unresolved: sum((tracing) => spots(tracing).unresolved),
    doubts: sum((tracing) => spots(tracing).doubts),
    uncovered: `${bare.length}${bare.length > 0 ? ` (${bare.join(' ')})` : ''}; ${sum(({ uncovered }) => uncovered.length)} in the phrases`,
  };
}

const table: Row[] = [];

function sayTable(): void {
  say(`| typeface | strokes a letter | of ${CHARACTERS.length} characters wrong count | kinks | free ends off: mean, p95 % | strokes under ${UNRESOLVED} confidence | doubted places | characters with parts that no stroke covers |`);
  say('| --- | --- | --- | --- | --- | --- | --- | --- |');
  for (const { name, letters, strokes, wrong, kinks, ends, unresolved, doubts, uncovered } of table) {
    const { mean, p95 } = errorsOf(ends);
    say(`| ${name} | ${(strokes / letters).toFixed(2)} | ${wrong} | ${kinks} | ${mean.toFixed(1)}, ${p95.toFixed(1)} | ${unresolved} of ${strokes} | ${doubts} | ${uncovered} |`);
  }
}

function sayPhrase(face: Face, phrase: string): void {
  const glyphs = face.set(phrase).map(({ outline }) => outline);
  const started = performance.now();
  try {
    const tracing = traceOutlines(glyphs, {}, () => undefined);
    const took = performance.now() - started;
    say(`  "${phrase}": ${(tracing.strokes.length / phrase.replaceAll(' ', '').length).toFixed(2)} strokes a letter, ${tracing.junctions.length} junctions, ${took.toFixed(0)} ms; ${sayJudgement([judge(tracing)])}`);
  } catch (error) {
    say(`  "${phrase}" threw: ${String(error)}`);
  }
}

it.each(CORPUS.filter(({ name }) => only === undefined || name === only))('figures of $name', (entry) => {
  const face = openFace(entry.name, entry.weight);
  say(`${entry.name} (${entry.hand}${entry.heldOut ? ', held out' : ''})`);
  sayCharacters(face, entry);
  for (const phrase of PHRASES) sayPhrase(face, phrase);
  table.push(rowOf(face, entry));
}, 600_000);

afterAll(sayTable);
