import type { PlayedProgram } from '../../../src/editor/worker/protocol.ts';

/** One entry per move: where it ends, how long it takes, its feed (0 for a rapid or a wait), its line. */
export type Told = readonly [x: number, y: number, z: number, seconds: number, feed: number, line: number];

export function program(moves: readonly Told[], text = '', file = 'programs/a.ngc'): PlayedProgram {
  let clock = 0;
  return {
    file, cutterDiameter: 6, text,
    places: Float64Array.from([0, 0, 0, ...moves.flatMap(([x, y, z]) => [x, y, z])]),
    seconds: Float64Array.from([0, ...moves.map(([, , , took]) => (clock += took))]),
    feeds: Float32Array.from(moves, ([, , , , feed]) => feed),
    lines: Uint32Array.from(moves, ([, , , , , line]) => line),
  };
}

/** Two passes: one of two lines, one of an arc in three chords. */
export const TEXT = `(sign)
(Reach is small)
G0 Z10.0
S18000 M3
G4 P3.0
(groove 1)
G0 X10.0 Y0.0
G0 Z2.0
G1 Z-3.0 F500.0
X40.0 F1800.0
G0 Z10.0
(ring)
G0 X50.0 Y10.0
G1 Z-4.0 F500.0
G3 X50.0 Y14.0 I0.0 J2.0 F1200.0
G0 Z10.0
M5
M2
`;

export const first = program([
  [0, 0, 10, 1, 0, 2], [0, 0, 10, 3, 0, 4],
  [10, 0, 10, 1, 0, 6], [10, 0, 2, 1, 0, 7], [10, 0, -3, 2, 500, 8], [40, 0, -3, 4, 1800, 9], [40, 0, 10, 1, 0, 10],
  [50, 10, 10, 1, 0, 12], [50, 10, -4, 2, 500, 13], [51.5, 11, -4, 1, 1200, 14], [51.5, 13, -4, 1, 1200, 14], [50, 14, -4, 1, 1200, 14], [50, 14, 10, 1, 0, 15],
], TEXT);
export const second = program([[0, 0, 8, 2, 0, 1], [5, 5, 8, 2, 0, 2], [5, 5, -12, 6, 300, 3], [5, 5, 8, 1, 0, 4]], '(b)\nG0 Z8.0\nG0 X5.0 Y5.0\nG1 Z-12.0 F300.0\nG0 Z8.0\nM2\n', 'programs/b.ngc');
export const programs = [first, second];
