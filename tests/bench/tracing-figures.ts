import { it } from 'vitest';
import { tracingRows } from './tracing-rows.ts';

/** Prints every gate of the tracing of centre lines with what is reached. Asserts nothing: tests/lettering does. */
it('figures of tracing', () => {
  console.log(`${'shape'.padEnd(34)} | ${'gate'.padEnd(38)} | reached`);
  for (const row of tracingRows()) console.log(row);
}, 600_000);
