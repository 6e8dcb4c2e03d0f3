import { describe, expect, it } from 'vitest';
import { readProgram, movesOf, type ReadMove } from '../../src/machining/reader/read-program.ts';
import { arcRadius, arcSweep, moveLength, type ArcMove } from '../../src/machining/job/moves.ts';

/** The moves of a fragment, which is given an end and, unless it has its own, a feed. */
function read(...lines: string[]): readonly ReadMove[] {
  const result = readProgram(['F100', ...lines, 'M2', ''].join('\n'));
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.moves;
}

function events(...lines: string[]) {
  const result = readProgram([...lines, 'M2', ''].join('\n'));
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.events.map(({ line: _line, ...event }) => event);
}

const path = (moves: readonly ReadMove[]) => moves.map(({ kind, to }) => [kind, to.x, to.y, to.z].map((v) => (typeof v === 'number' ? Number(v.toFixed(9)) : v)));
const ends = (...lines: string[]) => path(read(...lines));
const last = (...lines: string[]) => read(...lines).at(-1)!;
const arcOf = (...lines: string[]) => {
  const move = last(...lines) as ReadMove & { kind: 'arc' };
  const arc: ArcMove = { kind: 'arc', to: move.to, centre: move.centre, clockwise: move.clockwise, feed: move.feed };
  return { centre: move.centre, sweep: arcSweep(move.from, arc), length: moveLength(move.from, arc), radii: [arcRadius(move.from, arc), arcRadius(move.to, arc)] };
};

describe('NISTIR 6556, 3.5.1 and 3.5.2: straight moves', () => {
  it('G0 is a traverse, G1 a feed; both stay in force', () => {
    expect(ends('G0 X1', 'Y2', 'G1 Z-3', 'X4')).toEqual([['rapid', 1, 0, 0], ['rapid', 1, 2, 0], ['line', 1, 2, -3], ['line', 4, 2, -3]]);
  });
  it('all axes move together', () => expect(ends('G1 X1 Y2 Z3')).toEqual([['line', 1, 2, 3]]));
  it('a move of no length is none', () => expect(ends('G0 X0 Y0', 'G1 Z0')).toEqual([]));
});

describe('NISTIR 6556, 3.5.3: arcs', () => {
  it('the centre-format example', () => {
    const arc = arcOf('G0 X7 Y7', 'G17 G2 X10 Y16 I3 J4');
    expect(arc.centre).toEqual({ x: 10, y: 11, z: 0 });
    expect(arc.radii).toEqual([5, 5]);
    expect(arc.sweep).toBeCloseTo(143.13, 2);
    expect(arc.length).toBeCloseTo(12.490, 3);
  });
  it('the same as a helix', () => {
    expect(arcOf('G0 X7 Y7 Z5', 'G17 G2 X10 Y16 I3 J4 Z9').length).toBeCloseTo(13.115, 3);
  });
  it('the radius format: R6 and R-6', () => {
    const less = arcOf('G2 X10 Y0 R6'), more = arcOf('G2 X10 Y0 R-6');
    expect(less.centre.x).toBeCloseTo(5, 9);
    expect(less.centre.y).toBeCloseTo(-3.3166, 4);
    expect([less.sweep, less.length].map((v) => Number(v.toPrecision(5)))).toEqual([112.89, 11.821]);
    expect(more.centre.y).toBeCloseTo(3.3166, 4);
    expect([more.sweep, more.length].map((v) => Number(v.toPrecision(5)))).toEqual([247.11, 25.878]);
  });
  it('counter-clockwise is the mirror image', () => {
    expect(arcOf('G3 X10 Y0 R6').centre.y).toBeCloseTo(3.3166, 4);
  });
  it('near a half circle the radius format moves the centre by a tenth for a thousandth (computed)', () => {
    const whole = arcOf('G2 X20 Y0 R10'), short = arcOf('G2 X19.999 Y0 R10');
    expect(whole.centre.y).toBeCloseTo(0, 6);
    expect(Math.abs(short.centre.y)).toBeCloseTo(0.099999, 5);
  });
  it('ending at the start is a full circle', () => expect(arcOf('G0 X5', 'G3 X5 I-5').sweep).toBe(360));
  it('I and J count from the start even in absolute and in incremental distance', () => {
    expect(arcOf('G0 X10 Y10', 'G91 G3 X-5 Y5 I-5').centre).toEqual({ x: 5, y: 10, z: 0 });
  });
  it('in the XZ plane clockwise is seen from positive Y', () => {
    // From (1, 0, 0) about the origin: seen from +Y, Z is to the right of X; clockwise from +X leads to +Z (right-hand rule, Z to X counter-clockwise).
    const move = last('G0 X1', 'G18 G2 X0 Z1 I-1') as ReadMove & { kind: 'arc' };
    expect(move.plane).toBe('XZ');
    const middle = movesOf([move], 0.001)[Math.floor(movesOf([move], 0.001).length / 2)]!.to;
    expect([middle.x > 0, middle.z > 0]).toEqual([true, true]);
  });
  it('in the YZ plane counter-clockwise leads from Y to Z', () => {
    const moves = movesOf([last('G0 Y1', 'G19 G3 Y0 Z1 J-1 K0 X2')], 0.001);
    expect(moves.every(({ to }) => Math.abs(Math.hypot(to.y, to.z) - 1) < 1e-9)).toBe(true);
    expect(moves.at(-1)!.to).toEqual({ x: 2, y: 0, z: 1 });
    expect(moves.length).toBeLessThan(60);
  });
});

describe('NISTIR 6556, 3.5.4 to 3.5.20: settings', () => {
  it('G4 waits P seconds', () => expect(events('G4 P1.5')[0]).toEqual({ kind: 'dwell', seconds: 1.5, beforeMove: 0 }));
  it('G10 L2 sets the origin of a system, other axes unchanged', () => {
    expect(ends('G10 L2 P1 Z1', 'G10 L2 P1 X3.5 Y17.2', 'G0 X0 Y0 Z0')).toEqual([['rapid', 3.5, 17.2, 1]]);
  });
  it('G54 to G59.3 select systems 1 to 9', () => {
    const set = Array.from({ length: 9 }, (_, k) => `G10 L2 P${k + 1} X${(k + 1) * 100}`);
    const names = ['G54', 'G55', 'G56', 'G57', 'G58', 'G59', 'G59.1', 'G59.2', 'G59.3'];
    expect(ends(...set, ...names.map((name) => `${name} G0 X1`)).map((row) => row[1])).toEqual([101, 201, 301, 401, 501, 601, 701, 801, 901]);
  });
  it('G20 and G21: inch and millimetre, feeds too', () => {
    expect(ends('G20', 'G0 X1', 'G21', 'Y1')).toEqual([['rapid', 25.4, 0, 0], ['rapid', 25.4, 1, 0]]);
    expect((last('G20', 'G1 X1 F10') as ReadMove & { kind: 'line' }).feed).toBe(254);
  });
  it('G28 and G30 go through the point to the stored place', () => {
    expect(ends('G0 X5 Y5 Z5', 'G28 Z9')).toEqual([['rapid', 5, 5, 5], ['rapid', 5, 5, 9], ['rapid', 0, 0, 0]]);
    expect(ends('G0 X5', 'G30')).toEqual([['rapid', 5, 0, 0], ['rapid', 0, 0, 0]]);
  });
  it('G53 is in machine coordinates for its own line', () => {
    expect(ends('G10 L2 P1 X100', 'G53 G0 X5', 'X5')).toEqual([['rapid', 5, 0, 0], ['rapid', 105, 0, 0]]);
  });
  it('G90 and G91: absolute and incremental', () => {
    expect(ends('G91 G0 X5', 'X5', 'G90 X1')).toEqual([['rapid', 5, 0, 0], ['rapid', 10, 0, 0], ['rapid', 1, 0, 0]]);
  });
  it('G92: at X 4 reading 7 makes an offset of -3, then reading 9 one of -5', () => {
    expect(ends('G0 X4', 'G92 X7', 'G0 X0').at(-1)).toEqual(['rapid', -3, 0, 0]);
    expect(ends('G0 X4', 'G92 X7', 'G92 X9', 'G0 X0').at(-1)).toEqual(['rapid', -5, 0, 0]);
    expect(ends('G0 X4', 'G92 X7', 'G0 X7')).toHaveLength(1);
  });
  it('G92 acts in all coordinate systems; .2 lifts it, .3 brings it back, .1 forgets it', () => {
    expect(ends('G10 L2 P2 X100', 'G0 X4', 'G92 X7', 'G55 X0').at(-1)![1]).toBe(97);
    expect(ends('G0 X4', 'G92 X7', 'G92.2', 'X0').at(-1)![1]).toBe(0);
    expect(ends('G0 X4', 'G92 X7', 'G92.2', 'G92.3', 'X0').at(-1)![1]).toBe(-3);
    expect(ends('G0 X4', 'G92 X7', 'G92.1', 'G92.3', 'X0').at(-1)![1]).toBe(0);
  });
  it('G93: 50 mm with F30 are 1500 mm/min, and F2 is half a minute', () => {
    const [fast, slow] = read('G93', 'G1 X50 F30', 'X0 F2') as (ReadMove & { kind: 'line' })[];
    expect([fast!.feed, fast!.feedMode]).toEqual([1500, 'inverse-time']);
    expect(50 / slow!.feed).toBe(0.5);
  });
  it('G93 times arcs by their length', () => {
    expect((last('G93', 'G3 X10 Y0 I5 F2') as ReadMove & { kind: 'arc' }).feed).toBeCloseTo(Math.PI * 5 * 2, 9);
  });
  it('words without influence on the path are read', () => {
    expect(ends('G40 G49 G61 G98', 'G61.1', 'G64', 'M48', 'M49', 'G43 H0', 'G0 X1')).toHaveLength(1);
  });
});

describe('NISTIR 6556, 3.6: M words', () => {
  it('M3, M4, M5 turn the spindle', () => {
    const moves = read('S900 M3', 'G0 X1', 'M4', 'X2', 'M5', 'X3');
    expect(moves.map(({ spindle, spindleSpeed }) => [spindle, spindleSpeed])).toEqual([['clockwise', 900], ['counter-clockwise', 900], ['off', 900]]);
  });
  it('M0 and M60 pause, M1 where the operator wants', () => {
    expect(events('M0', 'M1', 'M60').filter(({ kind }) => kind === 'pause')).toEqual([false, true, false].map((optional) => ({ kind: 'pause', optional, beforeMove: 0 })));
  });
  it('M6 changes to the slot T chose and stops the spindle', () => {
    expect(events('T3', 'M3 S100', 'M6').slice(1, 3)).toEqual([
      { kind: 'spindle', direction: 'off', speed: 100, beforeMove: 0 }, { kind: 'tool-change', slot: 3, beforeMove: 0 }]);
  });
  it('M7, M8, M9: mist, flood, none; the first two may share a line', () => {
    expect(events('M7', 'M8', 'M9', 'M7 M8').filter(({ kind }) => kind === 'coolant').map((e) => [(e as { mist: boolean }).mist, (e as { flood: boolean }).flood]))
      .toEqual([[true, false], [false, true], [false, false], [true, true]]);
  });
  it('M2 and M30 stop the spindle and end: nothing after is carried out', () => {
    const result = readProgram('M3 S1\nM30\nG0 X5\nnonsense');
    expect(result.ok && [result.moves, result.events.map(({ kind }) => kind)]).toEqual([[], ['spindle', 'spindle', 'end']]);
  });
});

describe('NISTIR 6556, 3.5.16: canned cycles', () => {
  it('3.5.16.1 example 1: G81 absolute', () => {
    expect(ends('G0 X1 Y2 Z3', 'G90 G81 G98 X4 Y5 Z1.5 R2.8').slice(1)).toEqual([
      ['rapid', 4, 5, 3], ['rapid', 4, 5, 2.8], ['line', 4, 5, 1.5], ['rapid', 4, 5, 3]]);
  });
  it('3.5.16.1 example 2: G81 incremental with three repeats', () => {
    expect(ends('G0 X1 Y2 Z3', 'G91 G81 G98 X4 Y5 Z-0.6 R1.8 L3').slice(1)).toEqual([
      ['rapid', 1, 2, 4.8],
      ['rapid', 5, 7, 4.8], ['line', 5, 7, 4.2], ['rapid', 5, 7, 4.8],
      ['rapid', 9, 12, 4.8], ['line', 9, 12, 4.2], ['rapid', 9, 12, 4.8],
      ['rapid', 13, 17, 4.8], ['line', 13, 17, 4.2], ['rapid', 13, 17, 4.8]]);
  });
  it('G83 as the reference code does it (between pecks to R)', () => {
    expect(ends('G0 Z5', 'G90 G98 G83 X10 Y10 Z-6 R1 Q3').slice(1)).toEqual([
      ['rapid', 10, 10, 5], ['rapid', 10, 10, 1], ['line', 10, 10, -2], ['rapid', 10, 10, 1], ['rapid', 10, 10, -1.746],
      ['line', 10, 10, -5], ['rapid', 10, 10, 1], ['rapid', 10, 10, -4.746], ['line', 10, 10, -6], ['rapid', 10, 10, 5]]);
  });
  it('G82 waits at the bottom', () => {
    const result = readProgram('F9\nG0 Z5\nG82 X1 Z-1 R1 P2\nM2');
    expect(result.ok && result.events.find(({ kind }) => kind === 'dwell')).toEqual({ kind: 'dwell', seconds: 2, line: 3, beforeMove: 4 });
  });
  it('G99 goes back to R only', () => {
    expect(ends('G0 Z5', 'G99 G81 X1 Z-1 R1').at(-1)).toEqual(['rapid', 1, 0, 1]);
  });
  it('R and Z stay for the next lines, L does not', () => {
    expect(ends('G0 Z5', 'G99 G81 X1 Z-1 R1 L2', 'X2').slice(-3)).toEqual([['rapid', 2, 0, 1], ['line', 2, 0, -1], ['rapid', 2, 0, 1]]);
    expect(refusal('F9', 'G0 Z5', 'G81 X1 Z-1 R1', 'G0 X0', 'G81 X1 Z-1').expected).toContain('R word');
  });
});

/** What is wrong with a fragment; fails if nothing is. */
function refusal(...lines: string[]) {
  const result = readProgram([...lines, 'M2'].join('\n'));
  if (result.ok) throw new Error(`accepted: ${lines.join(' | ')}`);
  return result.problems[0];
}

describe('what the standard forbids is refused with its line', () => {
  it.each([
    ['G1 with no axis word', ['F1', 'G1'], 2, 'X, Y or Z'],
    ['G0 with no axis word', ['G0'], 1, 'X, Y or Z'],
    ['axis words before any motion', ['X1'], 1, 'motion'],
    ['axis words under G80', ['G0 X1', 'G80', 'X2'], 3, 'motion'],
    ['axis words beside G80', ['G0 X1', 'G80 X2'], 2, 'motion'],
    ['feeding without a feed', ['G1 X1'], 1, 'feed'],
    ['feeding with F0', ['F0', 'G1 X1'], 2, 'feed'],
    ['inverse time without F on the line', ['G93', 'G1 X1 F1', 'X2'], 3, 'F word'],
    ['units per minute after inverse time without F', ['G93 G1 X1 F1', 'G94', 'X2'], 3, 'feed'],
    ['arc with neither in-plane axis', ['F1', 'G2 Z1 I1'], 2, 'X or Y'],
    ['arc with neither centre nor radius', ['F1', 'G2 X1'], 2, 'I, J or R'],
    ['arc with centre and radius', ['F1', 'G2 X1 I1 R1'], 2, 'radius or a centre'],
    ['arc with K in the XY plane', ['F1', 'G2 X1 I1 K1'], 2, 'no K'],
    ['arc with J in the XZ plane', ['F1', 'G18 G2 X1 J1'], 2, 'no J'],
    ['arc of no radius', ['F1', 'G2 X1 I0 J0'], 2, 'radius'],
    ['radius arc ending at its start', ['F1', 'G2 X0 R5'], 2, 'away from its start'],
    ['radius arc that does not reach', ['F1', 'G2 X10 R4'], 2, 'half the distance'],
    ['radii differing by 0.003 mm', ['F1', 'G2 X10.003 I5 J0'], 2, '0.002 mm'],
    ['radii differing by 0.0003 inch', ['G20', 'F1', 'G2 X10.0003 I5 J0'], 3, '0.0002 inch'],
    ['negative dwell', ['G4 P-1'], 1, 'P of 0 or more'],
    ['dwell without time', ['G4'], 1, 'P word'],
    ['negative spindle speed', ['S-1'], 1, 'S of 0 or more'],
    ['broken slot', ['T1.5'], 1, 'whole'],
    ['G53 without a straight move', ['G53 X1'], 1, 'motion'],
    ['G53 with an arc', ['F1', 'G2 X2 I1', 'G53 X0 I-1'], 3, 'G53'],
    ['G53 in incremental distance', ['G91', 'G53 G0 X1'], 2, 'G90'],
    ['G92 without axis words', ['G92'], 1, 'G92'],
    ['G10 without L2', ['G10 L3 P1 X1'], 1, 'L2'],
    ['G10 for a tenth system', ['G10 L2 P10 X1'], 1, 'P1 to P9'],
    ['cycle without holes', ['F1', 'G81 Z-1 R1', 'G81 R1'], 3, 'X, Y or Z'],
    ['cycle with R below Z', ['F1', 'G81 X1 Z1 R0'], 2, 'R above Z'],
    ['cycle without R', ['F1', 'G81 X1 Z-1'], 2, 'R word'],
    ['cycle without Z', ['F1', 'G81 X1 R1'], 2, 'Z word'],
    ['cycle repeated 0 times', ['F1', 'G81 X1 Z-1 R1 L0'], 2, 'L from 1'],
    ['cycle repeated 1.5 times', ['F1', 'G81 X1 Z-1 R1 L1.5'], 2, 'whole'],
    ['G82 without P', ['F1', 'G82 X1 Z-1 R1'], 2, 'P word'],
    ['G82 with negative P', ['F1', 'G82 X1 Z-1 R1 P-1'], 2, 'P of 0'],
    ['G83 without Q', ['F1', 'G83 X1 Z-1 R1'], 2, 'Q word'],
    ['G83 with Q0', ['F1', 'G83 X1 Z-1 R1 Q0'], 2, 'Q above 0'],
    ['cycle in inverse time', ['G93', 'G81 X1 Z-1 R1 F1'], 2, 'G94'],
    ['G43 without H', ['G43'], 1, 'G49'],
    ['idle I', ['G0 X1 I1'], 1, 'no I'],
    ['idle R', ['G0 X1 R1'], 1, 'no R'],
    ['idle Q', ['F1', 'G81 X1 Z-1 R1 Q1'], 2, 'no Q'],
    ['idle L', ['G0 X1 L1'], 1, 'no L'],
    ['idle P', ['G0 X1 P1'], 1, 'no P'],
    ['idle H', ['H1'], 1, 'no H'],
    ['idle D', ['D1'], 1, 'no D'],
    ['a code nobody knows', ['G5'], 1, 'G code'],
    ['a code between codes', ['G0.05 X1'], 1, 'G code'],
    ['an M code nobody knows', ['M10'], 1, 'M code'],
    ['five M words', ['M3 M8 M48 M6 M1'], 1, 'four'],
    ['two X', ['G0 X1 X2'], 1, 'one X'],
  ])('%s', (_, lines, line, expected) => {
    const problem = refusal(...lines);
    expect(problem).toMatchObject({ line, place: `line ${line}` });
    expect(problem.expected).toContain(expected);
    expect(problem.found).not.toBe('');
    expect(problem.advice).toMatch(/\.$/);
  });

  it('radii differing by 0.001 mm are within the rule', () => expect(read('G2 X10.001 I5 J0')).toHaveLength(1));

  it('one word of each modal group (table 4), M7 with M8 excepted', () => {
    const groups = [['G0', 'G1', 'G2', 'G3', 'G80', 'G81', 'G82', 'G83'], ['G17', 'G18', 'G19'], ['G90', 'G91'], ['G93', 'G94'], ['G20', 'G21'],
      ['G98', 'G99'], ['G54', 'G55', 'G56', 'G57', 'G58', 'G59', 'G59.1', 'G59.2', 'G59.3'], ['G61', 'G61.1', 'G64'],
      ['G4', 'G10', 'G28', 'G30', 'G53', 'G92', 'G92.1', 'G92.2', 'G92.3'],
      ['M0', 'M1', 'M2', 'M30', 'M60'], ['M3', 'M4', 'M5'], ['M8', 'M9'], ['M7', 'M9'], ['M48', 'M49']];
    for (const group of groups) {
      const accepted = group.flatMap((one) => group.filter((other) => !refusal(`${one} ${other}`).expected.includes('modal group')));
      expect(accepted).toEqual([]);
    }
  });

  it('words of different groups share a line', () => {
    expect(ends('G17 G21 G40 G49 G54 G61 G90 G94 G98 G0 X1 M3 M8 M48')).toHaveLength(1);
  });

  it.each(['G0 X1 G28', 'G1 G92 X1', 'G81 G10 L2 P1 X1', 'G2 X1 I1 G30'])('%s: axis words with two uses', (line) => {
    expect(refusal('F1', line).expected).toContain('one use');
  });

  it.each([
    ['G38.2 X1', 'Probing'], ['G41 D1', 'compensation'], ['G42', 'compensation'], ['G84 X1', 'canned'], ['G87', 'canned'], ['G89', 'canned'],
    ['G43 H2', 'tool lengths'], ['G0 X#1', 'Parameters'], ['#1=5', 'Parameters'], ['G0 X[1+2]', 'Expressions'], ['G0 Xsin[30]', 'Functions'], ['G0 A5', 'Rotary'],
  ])('%s is refused by name', (line, name) => expect(refusal(line).advice).toContain(name));
});

describe('NISTIR 6556, table 8: the order of one line', () => {
  it('M5 G0 Z5 stops the spindle before it lifts', () => {
    expect(last('M3 S1', 'G0 Z1', 'M5 G0 Z5').spindle).toBe('off');
  });
  it('G1 X10 F600 S18000 M3 sets all and then moves', () => {
    expect(last('G1 X10 F600 S18000 M3')).toMatchObject({ feed: 600, spindle: 'clockwise', spindleSpeed: 18000 });
  });
  it('G0 X0 M30 moves, then ends', () => {
    const result = readProgram('G0 X5\nG0 X0 M30');
    expect(result.ok && [result.moves.length, result.events]).toEqual([2, [{ kind: 'end', word: 'M30', line: 2, beforeMove: 2 }]]);
  });
  it('words act in that order wherever they stand', () => {
    expect(ends('X1 G0 G20 G91', 'M2')).toEqual([['rapid', 25.4, 0, 0]]);
    expect(events('G4 P1 M3 S5 (note)').map(({ kind }) => kind)).toEqual(['comment', 'spindle', 'dwell', 'spindle', 'end']);
  });
  it('the spindle turns before the dwell and the tool changes before the spindle turns', () => {
    expect(events('G4 P1 M3 M6 T2').map(({ kind }) => kind)).toEqual(['tool-change', 'spindle', 'dwell', 'spindle', 'end']);
  });
  it('a pause comes after the move of its line', () => expect(events('M0 G0 X1')[0]).toEqual({ kind: 'pause', optional: false, beforeMove: 1 }));
});

describe('NISTIR 6556, 3.3: form of lines and files', () => {
  it('case and blanks do not count outside comments', () => {
    expect(ends('g0 x 1 2 . 5\ty- 3')).toEqual([['rapid', 12.5, -3, 0]]);
  });
  it('numbers: signs, leading and trailing points', () => {
    expect(ends('G0 X+.5 Y-1. Z007.250')).toEqual([['rapid', 0.5, -1, 7.25]]);
  });
  it('G and M text in comments does nothing, MSG makes a message', () => {
    expect(events('(G0 X5 M30)', '(msg, change the cutter)').slice(0, 2)).toEqual([
      { kind: 'comment', text: 'G0 X5 M30', beforeMove: 0 }, { kind: 'message', text: ' change the cutter', beforeMove: 0 }]);
  });
  it('comments may stand between words, "/" and N first', () => {
    expect(ends('/N99999 (a) G0 (b) X1 (c)', 'N0 X2', 'N0 X3')).toHaveLength(3);
  });
  it('CRLF ends lines too', () => expect(readProgram('G0 X1\r\nM2\r\n').ok).toBe(true));
  it('256 characters are allowed, 257 are not', () => {
    expect(readProgram(`G0 X1${' '.repeat(251)}\nM2`).ok).toBe(true);
    expect(refusal(`G0 X1${' '.repeat(252)}`).found).toBe('257 characters');
  });
  it.each([
    ['G0 X1e-3', 'exponent'], ['G0 X1E3', 'exponent'], ['G0 X', 'digits'], ['G0 X.', 'digits'], ['G0 X--1', 'digits'], ['G0 X1.2.3', 'correct'],
    ['N100000 G0 X1', '99999'], ['N-1', '99999'], ['N1.5', '99999'], ['N G0', '99999'], ['G0 N5 X1', 'first'], ['G0 X1 ; done', 'parentheses'],
    ['G0 X1 (open', 'Close'], ['G0 X1 (a (b) c)', 'inner'], ['G0 X1 )', 'Open'], ['O100', 'correct'], ['G0 X1 / Y2', 'correct'],
    ['G0 X1 % Y2', 'alone'], ['(caf\u00e9)', 'accents'], ['(\u0007)', 'accents'], ['G0 X\u0661', 'digits'], ['\ufeffG0 X1', 'correct'], ['G0 X1\u0000', 'plain text'], ['G(x)0 X1', 'digits'],
  ])('%j is refused', (line, advice) => expect(refusal(line).advice).toContain(advice));

  it('a program ends with M2 or M30, or stands between percent signs', () => {
    expect(readProgram('%\nG0 X1\n%\nanything at all').ok).toBe(true);
    expect(readProgram('\n  \n % \nM2\n%\n').ok).toBe(true);
    expect(readProgram('G0 X1')).toMatchObject({ ok: false, problems: [{ line: 1, expected: 'M2 or M30 at the end' }] });
    expect(readProgram('')).toMatchObject({ ok: false, problems: [{ line: 0 }] });
    expect(readProgram('%\nG0 X1\nM2\n')).toMatchObject({ ok: false, problems: [{ line: 3, expected: 'a second percent sign' }] });
    expect(readProgram('G0 X1\n%\n')).toMatchObject({ ok: false, problems: [{ line: 2, expected: 'a percent sign on the first line too' }] });
  });
});

describe('hostile text', () => {
  it('one line of a hundred million characters is refused by its length', () => {
    expect(refusal('G'.repeat(1e8)).found).toBe('100000000 characters');
  });
  it('a million lines are read', () => expect(readProgram(`${'(x)\n\n\n\n'.repeat(25e4)}M2`).ok).toBe(true));
  it('repeats are bounded', () => expect(refusal('F1', 'G81 X1 Z-1 R1 L99999').expected).toContain('10000'));
  it('pecks of next to nothing are refused', () => {
    expect(refusal('F1', 'G83 X1 Z-1 R1 Q.000000001').expected).toContain('pecks');
    expect(refusal('F1', 'G91 G83 X1 Z-1 R1 Q.000000001').expected).toContain('pecks');
    expect(readProgram('F1\nG83 X1 Z9999999 R9999999.000000001 Q.000000000001\nM2').ok).toBe(true);
  });
  it('moves are bounded where pecks and repeats multiply', () => {
    expect(refusal('F1', 'G91 G83 X1 Z-1 R1 Q.0002 L10000').expected).toContain('moves');
  });
  it('numbers beyond any machine are refused', () => expect(refusal(`G0 X${'9'.repeat(200)}`).expected).toContain('up to'));
  it('what was found is shown short and printable', () => {
    expect(refusal(`G0 X1 ${'\u0001'.repeat(240)}`).found).toMatch(/^"[ -~]{1,44}"$/);
  });
  it('ends with a value for any text', () => {
    for (const text of ['\0', '%', '%%', '(', ')', '/', 'N', '\r', '\n', 'G', '-', '[]', '#', '__proto__', 'G1E309', '\ud800']) expect(readProgram(text).ok).toBe(false);
  });
});
