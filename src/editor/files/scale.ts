import type { PictureBox } from '../../values/picture.ts';

/** What fits a sheet of A4 held upright, with margins and the lines above and below the picture, mm. */
const PRINT_ROOM = { width: 180, height: 150 } as const;

/** The usual scales of drawings (ISO 5455), and what lies between for large signs. */
const SCALES = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/** How many millimetres of the work one printed millimetre stands for; undefined when it is too large for every scale. */
export function printScale({ minX, minY, maxX, maxY }: PictureBox): number | undefined {
  return SCALES.find((scale) => maxX - minX <= PRINT_ROOM.width * scale && maxY - minY <= PRINT_ROOM.height * scale);
}
