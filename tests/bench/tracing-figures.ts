import { it } from 'vitest';
import { timeRows, tracingRows } from './tracing-rows.ts';

/** Prints every gate of the tracing of centre lines with what is reached. Asserts nothing: tests/lettering does. */
it('figures of tracing', () => {
  console.log(`${'shape'.padEnd(34)} | ${'gate'.padEnd(38)} | reached`);
  const rows: string[] = [];
  for (const row of tracingRows()) {
    rows.push(row);
    console.log(row);
  }
  console.log(`${rows.filter((row) => row.startsWith('ok')).length} gates held, ${rows.filter((row) => row.startsWith('MISSED')).length} missed`);
  for (const row of timeRows()) console.log(row);
}, 600_000);
