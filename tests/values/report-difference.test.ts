import { expect, it } from 'vitest';
import { type Check, type Report, reportChanges } from '../../src/values/index.ts';

const check = (value: number, status: Check['status'] = 'pass', name = 'wall'): Check => ({ check: name, status, value, limit: 3, unit: 'mm', says: '' });
const program = (minutes: number, blocks: number) => ({ file: 'programs/a.ngc', written: true, cutter: '', cutterDiameter: 4, reach: { min: [], max: [] }, minutes, cuttingMinutes: 0, blocks });
const report = (more: Partial<Report> = {}): Report => ({ graph: 'g', status: 'pass', checks: [check(5)], cautions: [], quantities: { weight: { value: 2, unit: 'kg' } }, setups: [{ name: 's', shift: [0, 0], programs: [program(10, 100)] }], timings: {}, ...more });

it('finds nothing between equal runs, however long they took', () => {
  expect(reportChanges(report(), report({ timings: { a: 9 } }))).toEqual([]);
  expect(reportChanges(report(), report({ quantities: { weight: { value: 2 * (1 + 1e-12), unit: 'kg' } } }))).toEqual([]);
});

it('sets figures side by side, with how a check was judged', () => {
  const changes = reportChanges(report(), report({ status: 'fail', checks: [check(2, 'fail')], quantities: { weight: { value: 3, unit: 'kg' }, area: { value: 1, unit: 'm2' } }, setups: [{ name: 's', shift: [0, 0], programs: [program(10, 90)] }] }));
  expect(changes).toEqual([
    { of: 'status', name: 'status', unit: '', from: 'pass', to: 'fail' },
    { of: 'check', name: 'wall', unit: 'mm', from: 5, to: 2, judged: ['pass', 'fail'] },
    { of: 'quantity', name: 'weight', unit: 'kg', from: 2, to: 3 }, { of: 'quantity', name: 'area', unit: 'm2', to: 1 },
    { of: 'program', name: 'programs/a.ngc blocks', unit: 'count', from: 100, to: 90 },
  ]);
});

it('tells checks of one name apart by their order', () => {
  expect(reportChanges(report({ checks: [check(5), check(4)] }), report({ checks: [check(5), check(3.5)] })).map(({ name }) => name)).toEqual(['wall 2']);
});
