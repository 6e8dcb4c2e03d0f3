import { describe, expect, it } from 'vitest';
import { findingsOf, placeText, summaryOf, worstOf } from '../../../src/editor/checks/findings.ts';
import { nameText } from '../../../src/editor/checks/Figures.tsx';
import { secondsText } from '../../../src/editor/checks/Progress.tsx';
import { DOCUMENT, PROBLEM, TIGHT, WRONG, check, looked, report } from './example.ts';

const all = looked({
  checks: [check({}), TIGHT, WRONG],
  reports: new Map([
    ['groove', report({ cautions: [PROBLEM] })],
    ['emit', report({ state: 'blocked', missing: [{ port: 'region', from: 'groove' }] })],
    ['last', report({ state: 'failed', problems: [{ expected: 'a known type', found: 'gone-type', advice: 'Remove it.' }] })],
  ]),
  damage: [{ code: 'unknown-key', expected: 'a known key', found: 'colour', advice: 'Remove it.', node: 'groove' }],
});

describe('findings', () => {
  it('come with what failed first, then what waits, cautions, and what is in order', () => {
    expect(findingsOf(all).map(({ status, subject }) => `${status}: ${subject}`)).toEqual([
      'fail: Damage in the file', 'fail: gone-type cannot be computed', 'fail: Wrong cut',
      'waiting: Emit program waits', 'caution: Groove', 'caution: Tightest bend', 'pass: Tightest bend',
    ]);
  });

  it('say value, limit, place, what to do, and on which card', () => {
    const tight = findingsOf(all).find(({ subject, status }) => subject === 'Tightest bend' && status === 'caution');
    expect(tight).toMatchObject({ says: '27.4 mm, at least 30 mm. Widen the bend.', at: [412.345, -0.01], node: 'groove', title: 'Groove' });
    expect(findingsOf(all).find(({ status }) => status === 'waiting')?.says).toBe('It has not got region from Groove. Mend that step first.');
    expect(findingsOf(all).find(({ subject }) => subject === 'Groove')?.says).toBe('width: expected a width above 0 mm, found -3 mm. Enter a larger width.');
  });

  it('tell value and limit also of a check whose sentence names no subject', () => {
    expect(findingsOf(looked({ checks: [check({ says: 'All straight.' })] }))[0]).toMatchObject({ subject: 'Bend radius', says: 'All straight. 31 mm, limit 30 mm.' });
  });

  it('have keys of their own, also where checks repeat', () => {
    const keys = findingsOf({ ...all, outcome: { ...all.outcome!, checks: [TIGHT, TIGHT, TIGHT] } }).map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('of steps that are gone are not told', () => {
    expect(findingsOf({ ...all, damage: [], document: { ...DOCUMENT, nodes: [] } })).toEqual([]);
  });

  it('of a badly damaged file stay a list that can be read', () => {
    const damage = Array.from({ length: 5000 }, () => all.damage[0]!);
    const told = findingsOf(looked({ damage }));
    expect(told).toHaveLength(101);
    expect(told.at(-1)?.says).toContain('4900 more faults');
  });

  it('are counted in words, from the gravest on', () => {
    expect(summaryOf(findingsOf(all))).toBe('3 failed, 1 waiting, 2 cautions, 1 in order');
    expect(summaryOf(findingsOf(looked({ checks: [check({}), check({}), TIGHT] })))).toBe('1 caution, 2 in order');
    expect([summaryOf([]), worstOf([])]).toEqual(['', undefined]);
    expect(worstOf(findingsOf(all))).toBe('fail');
  });
});

describe('figures', () => {
  it('of places are tenths of a millimetre, without a minus before nothing', () => {
    expect(placeText([412.345, -0.01])).toBe('at x 412.3, y 0 mm');
  });

  it('are named in words', () => {
    expect(nameText('cutLength')).toBe('Cut length');
    expect(nameText('board-weight')).toBe('Board weight');
    expect(nameText('emit.minutes')).toBe('Minutes (emit)');
  });

  it('of time are read as from a clock', () => {
    expect([0, 42, 2310, 59_970, 125_000].map(secondsText)).toEqual(['0.00 s', '0.04 s', '2.3 s', '1 min 0 s', '2 min 5 s']);
  });
});
