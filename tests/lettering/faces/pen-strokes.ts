/**
 * How many strokes a pen makes of each letter and digit. The numbers are our own judgement of common practice, not taken
 * from a source: writers differ, and forms differ between typefaces, so most characters allow several. A corner may be
 * turned in one stroke or be the meeting of two; a bowl may be written with its stem or apart from it. What no number
 * allows for: spurs, bowls in pieces, and strokes that swap partners at a crossing.
 */
const PRINT: Readonly<Record<string, string>> = {
  a: '12', b: '12', c: '1', d: '12', e: '1', f: '2', g: '12', h: '12', i: '2', j: '2', k: '23', l: '1', m: '123', n: '12', o: '1', p: '12', q: '12',
  r: '12', s: '1', t: '2', u: '12', v: '12', w: '1234', x: '2', y: '12', z: '123',
  A: '23', B: '123', C: '1', D: '12', E: '234', F: '23', G: '123', H: '3', I: '13', J: '12', K: '23', L: '12', M: '1234', N: '123', O: '1', P: '12',
  Q: '2', R: '23', S: '1', T: '2', U: '12', V: '12', W: '1234', X: '2', Y: '23', Z: '123',
  0: '1', 1: '123', 2: '12', 3: '12', 4: '23', 5: '123', 6: '1', 7: '12', 8: '12', 9: '12',
};

/** Joined writing runs on through small letters; capitals are as many as the face's flourishes make them. */
const SCRIPT: Readonly<Record<string, string>> = {
  ...PRINT,
  f: '12', k: '123', l: '1', t: '2', x: '12', z: '12', p: '12', s: '12', r: '12', w: '123',
  A: '123', B: '123', C: '12', D: '12', E: '12', F: '23', G: '12', H: '234', I: '123', J: '12', K: '234', L: '12', M: '1234', N: '123', O: '12',
  P: '123', Q: '12', R: '123', S: '12', T: '23', U: '12', V: '12', W: '123', X: '23', Y: '12', Z: '123',
};

/** The numbers of strokes that are right for a character. */
export const penStrokes = (hand: 'print' | 'script', character: string): readonly number[] =>
  [...((hand === 'print' ? PRINT : SCRIPT)[character] ?? '')].map(Number);
