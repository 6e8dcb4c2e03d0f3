import { describe, expect, it } from 'vitest';
import { adaptMoves } from '../../src/machining/program/adapt.ts';
import { linkPasses } from '../../src/machining/program/link.ts';
import { type Controller } from '../../src/machining/job/machine.ts';
import { PROGRAM_START, movesReach } from '../../src/machining/job/moves.ts';
import { type Move, type Pass } from '../../src/machining/job/pass.ts';
import { buildProgram } from '../../src/machining/program/program.ts';
import { movesOf, readProgram } from '../../src/machining/reader/read-program.ts';
import { lastDecimal } from '../../src/machining/program/resolution.ts';
import { programTime } from '../../src/machining/program/time.ts';
import { numberText } from '../../src/machining/program/words.ts';
import { programStats, withDraftNotice, writeProgram } from '../../src/machining/program/writer.ts';
import { controller, flat6, machine } from '../support/machines.ts';
import { plainRead } from '../support/plain-reader.ts';
import { at, randomPasses, someController } from './program-fixture.ts';

const heights = { clearance: 15, retract: 2 };
const write = (passes: readonly Pass[], changes: Partial<Controller> = {}, notes: readonly string[] = []) => {
  const target = { ...controller, ...changes };
  const moves = adaptMoves(linkPasses(passes, heights), target, 0.01);
  return { moves, target, text: writeProgram({ name: 'test', cutter: flat6, moves, machine: { ...machine, controller: target }, notes }) };
};

const groove: Pass = {
  kind: 'groove', name: 'groove 1, layer 1 of 1', cutter: flat6, start: at(20, 30, 2),
  moves: [
    { kind: 'line', to: at(20, 30, 0.5), feed: 500 },
    { kind: 'line', to: at(60, 30, -2), feed: 900 },
    { kind: 'line', to: at(100, 30, -2), feed: 1800 },
    { kind: 'arc', to: at(100, 70, -2), centre: { x: 100, y: 50 }, clockwise: false, feed: 1800 },
    { kind: 'line', to: at(20, 70, -2), feed: 1800 },
  ],
};
const hole: Pass = {
  kind: 'hole', name: 'cable hole 1', cutter: flat6, start: at(110, 30, 2),
  moves: [
    { kind: 'line', to: at(110, 30, -4), feed: 500 }, { kind: 'rapid', to: at(110, 30, 2) }, { kind: 'rapid', to: at(110, 30, -3.5) },
    { kind: 'line', to: at(110, 30, -8.4), feed: 500 },
  ],
};
const unparked = {
  file: 'programs/set-up-1-cutter-1.ngc', name: 'OPEN sign, set-up 1, cutter 1', cutter: flat6, passes: [groove, hole], heights, machine,
  tolerance: 0.01, shift: [0, 0] as const, notes: [],
};
const plan = { ...unparked, park: { x: 0, y: 0 } };

const blocksOf = (text: string) => text.split('\n').map((line) => line.replace(/\([^)]*\)/g, '').trim()).filter((line) => line !== '');

/** Greatest difference in one coordinate, and the feeds' greatest one in mm/min. */
function differences(planned: readonly Move[], read: readonly { kind: string; to: number[]; feed: number; centre?: number[]; clockwise?: boolean }[]) {
  expect(read.map(({ kind }) => kind).join()).toBe(planned.map(({ kind }) => kind).join());
  let length = 0, feed = 0, turned = 0;
  planned.forEach((move, k) => {
    const one = read[k]!;
    length = Math.max(length, ...[move.to.x, move.to.y, move.to.z].map((value, axis) => Math.abs(value - one.to[axis]!)));
    if (move.kind !== 'rapid') feed = Math.max(feed, Math.abs(move.feed - one.feed));
    if (move.kind !== 'arc') return;
    length = Math.max(length, Math.abs(move.centre.x - one.centre![0]!), Math.abs(move.centre.y - one.centre![1]!));
    turned += Number(one.clockwise !== move.clockwise);
  });
  return { length, feed, turned };
}

describe('what is written is what was planned', () => {
  it('by the strict reader and by a plain one, for random moves on any controller', () => {
    for (let seed = 0; seed < 40; seed++) {
      const { moves, text, target } = write(randomPasses(seed), someController(seed));
      const strict = readProgram(text);
      if (!strict.ok) throw new Error(`seed ${seed}: ${JSON.stringify(strict.problems)}`);
      const half = lastDecimal(target) / 2;
      const seen = movesOf(strict.moves, 0.01).map((move) => ({
        kind: move.kind, to: [move.to.x, move.to.y, move.to.z], feed: move.kind === 'rapid' ? 0 : move.feed,
        ...(move.kind === 'arc' ? { centre: [move.centre.x, move.centre.y], clockwise: move.clockwise } : {}),
      }));
      for (const read of [seen, plainRead(text)]) {
        const worst = differences(moves, read);
        expect(worst.length).toBeLessThan(half);
        expect(worst.feed).toBeLessThan(0.05);
        expect(worst.turned).toBe(0);
      }
    }
  });

  it('numbers never come in exponents, from any locale, or as minus nothing', () => {
    expect([1e-7, -1e-7, 123456.789, -0.5, 0, 2.5].map((value) => numberText(value, 4))).toEqual(['0.0', '0.0', '123456.789', '-0.5', '0.0', '2.5']);
    expect(numberText(12, 0)).toBe('12.0');
  });
});

describe('a safe program (common practice, no source)', () => {
  const seeds = Array.from({ length: 24 }, (_, seed) => seed);

  it('says one group to a line first, then lifts by Z alone, then turns the spindle, then waits', () => {
    expect(blocksOf(write([groove]).text).slice(0, 12)).toEqual(['G21', 'G17', 'G40', 'G49', 'G80', 'G90', 'G94', 'G54', 'G0 Z15.0', 'S18000 M3', 'G4 P3.0', 'G0 X20.0 Y30.0']);
  });

  it('lifts, stops the spindle and ends, each on its line', () => {
    expect(blocksOf(write([groove]).text).slice(-3)).toEqual(['G0 Z15.0', 'M5', 'M30']);
    expect(blocksOf(write([groove], { programEnd: 'M2', percentLines: true }).text).slice(-3)).toEqual(['M5', 'M2', '%']);
  });

  it('never feeds with the spindle off, never moves across before the lift, never ends low', () => {
    for (const seed of seeds) {
      const read = readProgram(write(randomPasses(seed), someController(seed)).text);
      if (!read.ok) throw new Error('unreadable');
      expect(read.moves.every(({ kind, spindle }) => kind === 'rapid' || spindle === 'clockwise')).toBe(true);
      expect(read.moves[0]!.to).toMatchObject({ x: 0, y: 0 });
      expect(read.moves[0]!.to.z).toBeCloseTo(15, 2);
      expect(read.moves.at(-1)!.to.z).toBeCloseTo(15, 2);
      const order = read.events.filter(({ kind }) => kind !== 'comment').map(({ kind, beforeMove }) => [kind, beforeMove]);
      expect(order).toEqual([['spindle', 1], ['dwell', 1], ['spindle', read.moves.length], ['end', read.moves.length]]);
    }
  });

  it('gives X and Y the first time even where they are 0', () => {
    const zero: Pass = { ...groove, start: at(0, 30, 2) };
    expect(blocksOf(write([zero]).text)[11]).toBe('G0 X0.0 Y30.0');
  });

  it('states a feed no later than the first feed move', () => {
    for (const seed of seeds) {
      const blocks = blocksOf(write(randomPasses(seed), someController(seed)).text);
      const first = blocks.findIndex((block) => /\bG[123]\b|G[123][XYZ]/.test(block));
      expect(blocks.slice(0, first + 1).some((block) => /F[\d.]+$/.test(block))).toBe(true);
    }
  });

  it('holds no word that controllers read differently', () => {
    for (const seed of seeds) {
      const text = blocksOf(write(randomPasses(seed), someController(seed)).text).join('\n');
      const codes = new Set([...text.matchAll(/[GM][\d.]+/g)].map(([code]) => code));
      for (const code of codes) expect(['G0', 'G1', 'G2', 'G3', 'G4', 'G17', 'G20', 'G21', 'G40', 'G49', 'G54', 'G80', 'G90', 'G94', 'M2', 'M3', 'M5', 'M30']).toContain(code);
      expect(text).not.toMatch(/[RTHLQK;#[]/);
    }
  });

  it('keeps to the longest line and numbers its lines where wanted', () => {
    for (const seed of seeds) {
      const target = someController(seed);
      const lines = write(randomPasses(seed), target, ['a long note about clamps that goes on and on, longer than any display can hold'], ).text.split('\n').slice(0, -1);
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(target.longestLine);
      expect(lines.filter((line) => line !== '%').every((line) => /^N\d{1,5} /.test(line))).toBe(target.lineNumbers);
    }
  });

  it('numbers stay within five digits in a program of 12 000 lines', () => {
    const moves = Array.from({ length: 12000 }, (_, k): Move => ({ kind: 'line', to: at(k % 500, k % 7, -1), feed: 900 }));
    const { text } = write([{ ...groove, moves }], { lineNumbers: true });
    expect(readProgram(text).ok).toBe(true);
    expect(new Set(text.match(/^N\d+/gm)).size).toBe(text.trim().split('\n').length);
  });

  it('puts the feed ahead or leaves out blanks where a line is full, and refuses a line too short for anything', () => {
    const far: Pass = { ...groove, start: at(-123456.7891, -123456.7891, 2), moves: [{ kind: 'arc', to: at(-123400.1234, -123456.7891, -12.3456), centre: { x: -123428.45625, y: -123456.7891 }, clockwise: true, feed: 1234.5 }] };
    const blocks = blocksOf(write([far], { longestLine: 60 }).text);
    expect(blocks).toContain('F1234.5');
    expect(readProgram(write([far], { longestLine: 54 }).text).ok).toBe(true);
    expect(() => write([far], { longestLine: 30 })).toThrow(RangeError);
  });

  it('tells milliseconds to controllers that read milliseconds, and nothing where the spindle needs no time', () => {
    expect(blocksOf(write([groove], { dwellUnit: 'milliseconds' }).text)).toContain('G4 P3000');
    const moves = adaptMoves(linkPasses([groove], heights), controller, 0.01);
    expect(writeProgram({ name: '', cutter: flat6, moves, machine: { ...machine, spindleStart: 0 }, notes: [] })).not.toContain('G4 ');
  });

  it('refuses moves that do not begin and end lifted', () => {
    const moves = linkPasses([groove], heights);
    for (const wrong of [[], moves.slice(3), moves.slice(0, -1)]) {
      expect(() => writeProgram({ name: '', cutter: flat6, moves: wrong, machine, notes: [] })).toThrow(RangeError);
    }
  });
});

describe('comments', () => {
  const head = (text: string) => text.split('\n').filter((line) => line.startsWith('('));

  it('say program, cutter, units, the zero of Z and a caution', () => {
    const [name, cutter, units, ...rest] = head(write([groove]).text);
    expect([name, cutter, units]).toEqual(['(test)', '(Cutter: flat end mill, diameter 6.0 mm)', '(Units: mm. Z0 is the top face of the sheet.)']);
    expect(rest.join()).toContain('CAUTION');
  });

  it('say the diameter in inches too where inches are spoken', () => {
    expect(write([groove], { units: 'inch' }).text).toContain('diameter 6.0 mm = 0.2362 inch');
  });

  it('are plain ASCII of at most 60 characters without parentheses, whatever the notes hold', () => {
    const notes = ['Café (north side)\r\nM30\u0007 \u{1F600}', '\u202e%', 'x'.repeat(200), '   ', ''];
    const { text } = write([groove], {}, notes);
    expect(readProgram(text).ok).toBe(true);
    expect(text).toContain('(Cafe [north side] M30 ?)');
    for (const line of head(text)) expect(line).toMatch(/^\([ -'*-~]{1,60}\)$/);
  });

  it('are left out where a controller has none', () => expect(write([groove], { comments: 'none' }, ['note']).text).not.toMatch(/[()]/));

  it('a draft says so first, after an opening percent sign', () => {
    for (const percentLines of [false, true]) {
      const { text } = write([groove], { percentLines });
      const draft = withDraftNotice(text);
      expect(draft.split('\n')[Number(percentLines)]).toMatch(/^\(DRAFT/);
      expect(readProgram(draft)).toMatchObject({ ok: true });
      expect(plainRead(draft)).toHaveLength(plainRead(text).length);
      expect(draft.length - text.length).toBe(draft.split('\n')[Number(percentLines)]!.length + 1);
    }
  });
});

describe('counting blocks', () => {
  it('counts lines with words, not comments, blanks or percent signs', () => {
    expect(programStats('%\n(a)\nN10 (b)\nG0 X1 (c)\n\nM2\n%\n')).toEqual({ lines: 6, blocks: 3 });
    expect(programStats('')).toEqual({ lines: 0, blocks: 0 });
  });

  it('arcs take fewer than lines', () => {
    expect(programStats(write([groove]).text).blocks).toBeLessThan(programStats(write([groove], { arcs: 'lines' }).text).blocks);
  });
});

describe('a whole program', () => {
  it('is printed as an operator wants to read it', async () => {
    await expect(buildProgram(plan).text).toMatchFileSnapshot('snapshots/program.ngc');
  });

  it('is printed in inches for a controller that speaks them', async () => {
    const inch = { ...machine, controller: { ...controller, units: 'inch' as const, lineNumbers: true, percentLines: true, helicalArcs: false } };
    await expect(buildProgram({ ...plan, machine: inch }).text).toMatchFileSnapshot('snapshots/program-inch.ngc');
  });

  it('says everything modal again after a heading, where programs are restarted', () => {
    const below: Pass = { ...groove, name: 'layer 2', start: at(20, 70, 2), moves: [{ kind: 'arc', to: at(40, 70, -3), centre: { x: 30, y: 70 }, clockwise: false, feed: 1800 }] };
    const lines = buildProgram({ ...unparked, passes: [groove, below] }).text.split('\n');
    expect(lines.slice(lines.indexOf('(layer 2)'))).toEqual(['(layer 2)', 'G3 X40.0 Y70.0 Z-3.0 I10.0 J0.0 F1800.0', 'G0 Z15.0', 'M5', 'M30', '']);
  });

  it('shift plus program coordinate is drawing coordinate', () => {
    const here = buildProgram(unparked), there = buildProgram({ ...unparked, shift: [100, -20] });
    expect(there.reach.min.x + 100).toBeCloseTo(here.reach.min.x, 9);
    expect(there.reach.max.y - 20).toBeCloseTo(here.reach.max.y, 9);
    expect(there.reach.max.z).toBe(here.reach.max.z);
    expect(there.text).toContain('(X0 Y0 lies at X 100.0, Y -20.0 of the drawing)');
  });

  it('reaches what it cuts and where it parks, not where the cutter stood before', () => {
    expect(buildProgram(unparked).reach).toEqual({ min: at(20, 30, -8.4), max: at(120, 70, 15) });
    expect(buildProgram(plan).reach.min).toEqual(at(0, 0, -8.4));
  });

  it('holds the moves its text says, and their time and blocks', () => {
    const program = buildProgram(plan);
    const read = readProgram(program.text);
    if (!read.ok) throw new Error('unreadable');
    expect(movesOf(read.moves, 0.01)).toEqual(program.moves);
    const time = programTime(PROGRAM_START, program.moves, machine);
    expect(program.minutes * 60).toBeCloseTo(time.seconds + machine.spindleStart, 9);
    expect(program.seconds).toEqual(time.ends);
    expect(program.spindleStart).toBe(machine.spindleStart);
    expect(program.cuttingMinutes * 60).toBeCloseTo(time.cuttingSeconds, 9);
    expect(program.cuttingMinutes).toBeLessThan(program.minutes);
    expect(program.blocks).toBe(programStats(program.text).blocks);
    expect(movesReach(program.moves[1]!.to, program.moves.slice(1))).toEqual(program.reach);
  });

  it('refuses no passes and the passes of another cutter', () => {
    expect(() => buildProgram({ ...plan, passes: [] })).toThrow(RangeError);
    expect(() => buildProgram({ ...plan, passes: [groove, { ...hole, cutter: { ...flat6, diameter: 3 } }] })).toThrow(/cable hole 1/);
  });
});
