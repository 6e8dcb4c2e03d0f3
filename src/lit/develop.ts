import { type Rgb, lightColour } from './colour.ts';
import type { Light } from './render.ts';
import type { View } from './scene.ts';
import { encoded, thresholdAt } from './transfer.ts';

/** Light of the room between night and day beside the luminance of a tube, on a surface that sends all of it back (common practice, no source). */
const NIGHT = 0.0012;
const DAY = 1.2;

/** Colour temperature of the room's light: sky, K. */
const SKY = 6800;

/** How many times brighter than white a tube at full power comes out at night; a brighter room is taken with less. */
const NIGHT_EXPOSURE = 4.5;

/** What comes out white, beside what would without a shoulder. */
const WHITE = 6;

export interface Pixels {
  readonly columns: number;
  readonly rows: number;
  /** Red, green, blue of each pixel, row by row from the top: codes of IEC 61966-2-1. */
  readonly codes: Uint8Array;
}

/** The picture of a light. */
export function developed({ sign, room }: Light, view: View, pause: () => void): Pixels {
  const { columns, rows } = sign;
  const codes = new Uint8Array(3 * columns * rows);
  const [own, sky] = gains(view);
  for (let y = 0, i = 0; y < rows; y++) {
    if (y % 128 === 0) pause();
    for (let x = 0; x < columns; x++, i++) {
      const threshold = thresholdAt(x, y);
      const [a, b] = [sign.values[i]!, room.values[i]!];
      for (let part = 0; part < 3; part++) codes[3 * i + part] = encoded(shouldered(a * own[part]! + b * sky[part]!), threshold);
    }
  }
  return { columns, rows, codes };
}

function gains({ colourTemperature, white, brightness, ambient, exposure }: View): readonly [Rgb, Rgb] {
  const room = NIGHT + (DAY - NIGHT) * ambient * ambient * ambient;
  // Rounded, as in the table of the transfer function.
  const gain = Math.round((NIGHT_EXPOSURE * 2 ** exposure * 1e6) / (1 + 4 * room)) / 1e6;
  const times = (colour: Rgb, level: number): Rgb => [colour[0] * level, colour[1] * level, colour[2] * level];
  return [times(lightColour(colourTemperature, white), gain * brightness), times(lightColour(SKY, white), gain * room)];
}

/** Bright light is compressed up to white: E. Reinhard et al., "Photographic tone reproduction for digital images", SIGGRAPH 2002, equation 4. */
const shouldered = (light: number): number => (light * (1 + light / (WHITE * WHITE))) / (1 + light);
