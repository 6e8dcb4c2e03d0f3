import type { Finding } from './findings.ts';

/** How a status is told: by sign and word, and by a class for its colour. */
export interface StatusLook {
  readonly sign: string;
  readonly word: string;
  readonly look: string;
}

export const STATUS: Readonly<Record<Finding['status'], StatusLook>> = {
  fail: { sign: '×', word: 'Failed', look: 'is-failed' },
  waiting: { sign: '…', word: 'Waiting', look: 'is-waiting' },
  caution: { sign: '!', word: 'Caution', look: 'is-caution' },
  pass: { sign: '✓', word: 'In order', look: 'is-pass' },
};
