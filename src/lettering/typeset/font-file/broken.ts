/**
 * Why a font file cannot be taken apart any further. Thrown from the depth of its tables and turned into a problem by
 * `openFont`, its only catcher: nothing of it gets out.
 */
export class BrokenFont extends Error {
  readonly expected: string;
  readonly found: string;
  readonly advice: string;

  constructor(expected: string, found: string, advice = 'Get the file anew, or choose another one.') {
    super(found);
    this.expected = expected;
    this.found = found;
    this.advice = advice;
  }
}

/** What is said of a file that ends before what it announces. */
export const cutShort = (found: string): BrokenFont => new BrokenFont('a whole font file', `one cut short or damaged: ${found}`);
