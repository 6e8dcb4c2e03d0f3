import { faultLine, type Faults } from './fault.ts';
import type { ExitStatus } from './status.ts';

/** Prints a command's result. */
export function print(text: string): void {
  process.stdout.write(`${text}\n`);
}

export function printJson(value: unknown): void {
  print(JSON.stringify(value, null, 2));
}

/** Prints each fault in a line of its own. */
export function printFaults(faults: Faults): ExitStatus {
  process.stderr.write(faults.map((fault) => `${faultLine(fault)}\n`).join(''));
  return 2;
}

/** A reader that stops listening (as `head` does) is no fault; a stdout that cannot be written to is one. */
export function watchOutput(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') return;
    process.exitCode = 2;
    process.stderr.write(`stdout: expected a place that can be written to, found ${error.code ?? 'an error'}. Redirect it to another place.\n`);
  });
  process.stderr.on('error', () => undefined);
}
