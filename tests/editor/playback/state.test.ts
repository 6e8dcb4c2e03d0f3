import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { totalSeconds } from '../../../src/editor/playback/moments.ts';
import { newestOnly } from '../../../src/editor/playback/newest.ts';
import {
  type Change, type PlaybackState, SPEEDS, closed, initialPlayback, loaded, opened, passed, paused, refused, soughtTo, started, stepped,
} from '../../../src/editor/playback/state.ts';
import { clock, depthWords, feedWords, passName } from '../../../src/editor/playback/words.ts';
import { first, program, programs } from './fixture.ts';

const total = totalSeconds(programs);
const after = (...changes: Change[]): PlaybackState => changes.reduce((state, one) => one(state), initialPlayback);
const ready = [opened, loaded(programs)];

describe('the playback', () => {
  it('stands still until it is asked to play', () => expect(after(...ready, passed(0.1)).seconds).toBe(0));

  it('lets the machine\'s time pass as much faster as was chosen', () => {
    for (const speed of SPEEDS) expect(after(...ready, (state) => ({ ...state, speed }), started, passed(0.05)).seconds).toBeCloseTo(Math.min(total, 0.05 * speed), 9);
  });

  it('does not leap after a frame that took long, nor go back with a clock that does', () => {
    expect(after(...ready, started, passed(60)).seconds).toBe(2.5);
    expect(after(...ready, started, passed(-3)).seconds).toBe(0);
  });

  it('stops at the end, and starts over from there', () => {
    const ended = after(...ready, soughtTo(total - 0.1), started, passed(0.2));
    expect(ended).toMatchObject({ seconds: total, playing: false });
    expect(started(ended)).toMatchObject({ seconds: 0, playing: true });
  });

  it('keeps its time when other programs come, if they have it, and stands still', () => {
    expect(after(...ready, soughtTo(12), started, loaded([first]))).toMatchObject({ seconds: 12, playing: false });
    expect(after(...ready, soughtTo(30), loaded([first]))).toMatchObject({ seconds: totalSeconds([first]) });
    expect(after(...ready, soughtTo(30), loaded([]))).toMatchObject({ seconds: 0 });
  });

  it('does not play what is not there', () => {
    expect(after(opened, started).playing).toBe(false);
    expect(after(...ready, started, refused('No.'))).toMatchObject({ playing: false, programs: [], refused: 'No.' });
  });

  it('takes steps as a halt, seconds not', () => {
    expect(after(...ready, started, stepped('move', 1))).toMatchObject({ playing: false, seconds: 1 });
    expect(after(...ready, soughtTo(9), started, stepped('pass', -1))).toMatchObject({ playing: false, seconds: 1 });
    expect(after(...ready, started, stepped('second', 1))).toMatchObject({ playing: true, seconds: 1 });
  });

  it('forgets everything but speed and relief when it is closed', () => {
    const fast: Change = (state) => ({ ...state, speed: 60, relief: false });
    expect(after(...ready, fast, soughtTo(3), started, closed)).toEqual({ ...initialPlayback, speed: 60, relief: false });
  });

  it('is never before the beginning or after the end, whatever is done', () => {
    const change = fc.oneof<fc.Arbitrary<Change>[]>(
      fc.double().map(soughtTo), fc.double().map(passed), fc.constantFrom(started, paused, loaded(programs), loaded([first]), loaded([program([])]), closed, opened),
      fc.tuple(fc.constantFrom('move' as const, 'pass' as const, 'second' as const), fc.constantFrom(1 as const, -1 as const)).map(([by, way]) => stepped(by, way)),
    );
    fc.assert(fc.property(fc.array(change, { maxLength: 30 }), (changes) => {
      const state = after(...ready, ...changes);
      expect(state.seconds).toBeGreaterThanOrEqual(0);
      expect(state.seconds).toBeLessThanOrEqual(totalSeconds(state.programs));
    }));
  });
});

describe('words', () => {
  it('tell time in hours, minutes and seconds', () => {
    expect([0, 59.99, 60, 3599.9999999, 36_000].map(clock)).toEqual(['0:00:00', '0:00:59', '0:01:00', '1:00:00', '10:00:00']);
  });

  it('tell a depth against the top face', () => {
    expect([-3, 0.001, -0, 10].map(depthWords)).toEqual(['3 mm below the top', 'at the top', 'at the top', '10 mm above the top']);
  });

  it('tell a feed, a rapid and a wait apart', () => {
    expect([feedWords({ way: 'feed', feed: Math.fround(1800.1) }), feedWords({ way: 'rapid', feed: 0 }), feedWords({ way: 'wait', feed: 0 })]).toEqual(['1800.1 mm/min', 'rapid', 'waiting for the spindle']);
  });

  it('name a pass as the program does, and none before the first', () => {
    expect([0, 4, 5, 10, 11, 15].map((line) => passName(first, line))).toEqual([undefined, undefined, 'groove 1', 'groove 1', 'ring', 'ring']);
  });
});

describe('asking for the newest only', () => {
  const setUp = () => {
    const sent: { question: number; answer: (value: string) => void; fail: (reason: unknown) => void }[] = [];
    const taken: string[] = [];
    const asking = newestOnly<number, string>({
      send: (question) => new Promise((answer, fail) => sent.push({ question, answer, fail })),
      take: (answer) => taken.push(answer), refuse: (reason) => taken.push(`refused ${String(reason)}`), every: 0,
    });
    return { sent, taken, asking };
  };
  const settle = () => vi.advanceTimersByTimeAsync(1);

  it('sends one at a time and leaves out what was overtaken', async () => {
    vi.useFakeTimers();
    const { sent, taken, asking } = setUp();
    for (const question of [1, 2, 3]) asking.ask(question);
    expect(sent.map(({ question }) => question)).toEqual([1]);
    sent[0]!.answer('one');
    await settle();
    expect(sent.map(({ question }) => question)).toEqual([1, 3]);
    sent[1]!.fail('three');
    await settle();
    expect(taken).toEqual(['one', 'refused three']);
    vi.useRealTimers();
  });

  it('takes no answer once it is stopped, and can be asked again', async () => {
    vi.useFakeTimers();
    const { sent, taken, asking } = setUp();
    asking.ask(1);
    asking.ask(2);
    asking.stop();
    sent[0]!.answer('one');
    await settle();
    asking.ask(4);
    sent[1]!.answer('four');
    await settle();
    expect(sent.map(({ question }) => question)).toEqual([1, 4]);
    expect(taken).toEqual(['four']);
    vi.useRealTimers();
  });
});
