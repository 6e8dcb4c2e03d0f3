import { describe, expect, it } from 'vitest';
import { amount, atLeast, atLeastGraded, atMost, worstStatus } from '../../src/values/check.ts';

const finding = { check: 'wall', value: 4, limit: 5, unit: 'mm', subject: 'Thinnest wall', advice: 'Move it.' };

describe('a check', () => {
  it('passes exactly at its limit', () => {
    expect(atLeast({ ...finding, value: 5 }).status).toBe('pass');
    expect(atMost({ ...finding, value: 5 }).status).toBe('pass');
  });

  it('fails beyond it, and says value, limit and what to do', () => {
    expect(atLeast(finding)).toMatchObject({ status: 'fail', says: 'Thinnest wall: 4 mm, at least 5 mm. Move it.' });
    expect(atMost({ ...finding, value: 6 }, 'caution')).toMatchObject({ status: 'caution', says: 'Thinnest wall: 6 mm, at most 5 mm. Move it.' });
  });

  it('gives no advice where there is nothing to do', () => {
    expect(atLeast({ ...finding, value: 9 }).says).toBe('Thinnest wall: 9 mm, at least 5 mm.');
  });

  it('never passes a value that is not a number', () => {
    expect(atLeast({ ...finding, value: NaN }).status).toBe('fail');
    expect(atMost({ ...finding, value: NaN }).status).toBe('fail');
  });

  it('tells the limit that counts when there are two', () => {
    const limits = { refuse: 3, caution: 5 };
    const graded = (value: number) => atLeastGraded({ ...finding, value }, limits);
    expect([graded(2), graded(3), graded(5)].map(({ status, limit }) => [status, limit])).toEqual([['fail', 3], ['caution', 5], ['pass', 5]]);
  });

  it('has a place only when there is one', () => {
    expect(atLeast({ ...finding, at: { x: 1, y: 2 } }).at).toEqual([1, 2]);
    expect('at' in atLeast(finding)).toBe(false);
  });
});

it('prints amounts with three decimals at most and their unit', () => {
  expect([amount(1.23456, 'mm'), amount(10, 'count'), amount(2.5, ''), amount(Infinity, 'mm')]).toEqual(['1.235 mm', '10', '2.5', 'no limit']);
});

it('ranks fail over caution over pass', () => {
  const all = (['pass', 'fail', 'caution'] as const).map((status) => ({ ...atLeast({ ...finding, value: 9 }), status }));
  expect([worstStatus(all), worstStatus([all[0]!, all[2]!]), worstStatus([])]).toEqual(['fail', 'caution', 'pass']);
});
