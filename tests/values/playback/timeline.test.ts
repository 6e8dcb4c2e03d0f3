import { describe, expect, it } from 'vitest';
import { buildProgram } from '../../../src/machining/program/program.ts';
import { makePlayer } from '../../../src/values/playback/player.ts';
import { stepProgram } from '../../../src/values/playback/steps.ts';
import { playedProgram } from '../../../src/values/playback/timeline.ts';
import { flat6, machine } from '../../support/machines.ts';
import { groove, ring, setUp, through } from './fixture.ts';

const played = (setup: ReturnType<typeof setUp>) => playedProgram(stepProgram(setup, setup.programs[0]!));
const all = [through, groove, ring];
const place = ({ places }: ReturnType<typeof played>, index: number) => [...places.slice(3 * index, 3 * index + 3)] as [number, number, number];
const indices = ({ feeds }: ReturnType<typeof played>) => [...feeds.keys()];

it('takes as long as the program, the wait for the spindle with it', () => {
  const setup = setUp(all);
  expect(played(setup).seconds.at(-1)).toBeCloseTo(setup.programs[0]!.minutes * 60, 9);
});

it('waits for the spindle after the lift, on the line that says so', () => {
  const program = played(setUp(all));
  expect(place(program, 2)).toEqual(place(program, 1));
  expect(program.seconds[2]! - program.seconds[1]!).toBeCloseTo(3, 9);
  expect(program.text.split('\n')[program.lines[1]!]).toBe('G4 P3.0');
});

it('goes as far as the program reaches, and no further', () => {
  const setup = setUp(all);
  const program = played(setup);
  const { min, max } = setup.programs[0]!.reach;
  const points = indices(program).slice(2).map((k) => place(program, k + 1));
  expect([0, 1, 2].map((axis) => Math.min(...points.map((p) => p[axis]!)))).toEqual([expect.closeTo(min.x, 2), expect.closeTo(min.y, 2), min.z]);
  expect([0, 1, 2].map((axis) => Math.max(...points.map((p) => p[axis]!)))).toEqual([expect.closeTo(max.x, 2), expect.closeTo(max.y, 2), max.z]);
});

it('never goes back in time', () => {
  const { seconds } = played(setUp(all));
  expect(seconds.every((s, k) => k === 0 || s >= seconds[k - 1]!)).toBe(true);
});

it('keeps chords within 0.01 mm of their arc', () => {
  const program = played(setUp([ring]));
  const onRing = indices(program).filter((k) => program.feeds[k] === 1200);
  expect(onRing.length).toBeGreaterThan(40);
  for (const k of onRing) {
    const [a, b] = [place(program, k), place(program, k + 1)];
    const middle = Math.hypot((a[0] + b[0]) / 2 - 70, (a[1] + b[1]) / 2 - 90);
    expect(middle).toBeGreaterThan(20 - 0.0101);
    expect(Math.hypot(b[0] - 70, b[1] - 90)).toBeCloseTo(20, 3);
  }
});

it('divides the time of an arc evenly between its chords', () => {
  const program = played(setUp([ring]));
  const onRing = indices(program).filter((k) => program.feeds[k] === 1200 && program.lines[k] === program.lines[indices(program).find((j) => program.feeds[j] === 1200)!]);
  const took = onRing.map((k) => program.seconds[k + 1]! - program.seconds[k]!);
  expect(Math.max(...took) - Math.min(...took)).toBeLessThan(1e-9);
});

describe.each([
  ['millimetres', {}], ['inches', { units: 'inch' as const }], ['line numbers and percent lines', { lineNumbers: true, percentLines: true }],
  ['lines for arcs, no comments', { arcs: 'lines' as const, comments: 'none' as const }], ['milliseconds of dwell', { dwellUnit: 'milliseconds' as const }],
])('in %s', (_, changes) => {
  const setup = setUp(all, [0, 0], changes);
  const program = played(setup);
  const unit = 'units' in changes ? 25.4 : 1;

  it('says on the line of each move where it ends', () => {
    const texts = program.text.split('\n');
    const words = (line: string) => Object.fromEntries([...line.matchAll(/([XYZ])(-?[\d.]+)/g)].map(([, axis, value]) => [axis, Number(value) * unit]));
    let checked = 0;
    indices(program).forEach((k) => {
      // Only the last chord of an arc ends where its line says.
      if (program.lines[k + 1] === program.lines[k]) return;
      const said = words(texts[program.lines[k]!]!);
      const [x, y, z] = place(program, k + 1);
      if ('X' in said) expect(x).toBeCloseTo(said['X']!, 6);
      if ('Y' in said) expect(y).toBeCloseTo(said['Y']!, 6);
      if ('Z' in said) expect(z).toBeCloseTo(said['Z']!, 6);
      checked += Object.keys(said).length;
    });
    expect(checked).toBeGreaterThan(15);
  });

  it('takes as long as the program', () => expect(program.seconds.at(-1)).toBeCloseTo(setup.programs[0]!.minutes * 60, 9));
});

it('shows the same on the sheet whatever the set-up is shifted by', () => {
  const [here, there] = [played(setUp(all)), played(setUp(all, [10.5, -3.25]))];
  // Where the cutter stands before differs, and so does the way to the first pass.
  const rest = (program: typeof here, ends: number) => [...program.places].slice(-3 * ends);
  const ends = here.feeds.length - 2;
  expect(there.feeds.length).toBe(here.feeds.length);
  expect(Math.max(...rest(there, ends).map((v, k) => Math.abs(v - rest(here, ends)[k]!)))).toBeLessThan(1e-9);
  expect([...there.lines].slice(3).every((line, k) => line === here.lines[k + 3])).toBe(true);
});

it('refuses a text that makes other moves than were timed, or that cannot be read', () => {
  const setup = setUp([groove]);
  const edited = (text: string) => () => stepProgram(setup, { ...setup.programs[0]!, text });
  const { text } = setup.programs[0]!;
  expect(edited(text.replace('M5', 'X1 Y1\nM5'))).toThrow(/moves, not the/);
  expect(edited(text.replace('G90', 'G90 G91'))).toThrow(/line \d+/);
});

it('goes where the sheet is cut: a correction of the set-up is undone', () => {
  const plain = setUp([groove], [300, 0]);
  const correction = { degrees: 1, shift: [0.5, -2] as const };
  const program = buildProgram({
    file: 'programs/a.ngc', name: 'a', cutter: flat6, passes: [groove], heights: { clearance: 10, retract: 2 }, machine, tolerance: 0.004, shift: [300, 0], correction, notes: [],
  });
  const [corrected, wanted] = [played({ ...plain, correction, programs: [program] }), played(plain)];
  const ends = indices(wanted).filter((k) => wanted.feeds[k]! > 0);
  expect(ends.length).toBeGreaterThan(1);
  for (const k of ends) expect(Math.hypot(...place(corrected, k + 1).map((value, axis) => value - place(wanted, k + 1)[axis]!))).toBeLessThan(2e-3);
});

it('names the set-up of every program, and its place in the plan, where there are several', () => {
  const two = [{ ...setUp([groove]), place: 0 }, { ...setUp([ring], [300, 0]), name: 'set-up 3', place: 2 }];
  expect(makePlayer(two, undefined).programs().map((program) => program.setUp)).toEqual([{ name: 'set-up 1', place: 0 }, { name: 'set-up 3', place: 2 }]);
  expect(makePlayer(two.slice(0, 1), undefined).programs()[0]!.setUp).toBeUndefined();
});
