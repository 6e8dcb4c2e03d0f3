/** Red, green, blue in linear light, 1 for white. */
export type Rgb = readonly [number, number, number];
type Three = readonly [number, number, number];
type Matrix = readonly [Three, Three, Three];

/** Colour temperatures, K, that the formula of the locus holds for. */
export const COLOUR_TEMPERATURES = { min: 1000, max: 15000 } as const;

/** Where a black body of `kelvin` lies in CIE 1931: M. Krystek, "An algorithm to calculate correlated colour temperature", Color Research and Application 10 (1985), pp. 38-40. */
export function blackBody(kelvin: number): { readonly x: number; readonly y: number } {
  const square = kelvin * kelvin;
  const u = (0.860117757 + 1.54118254e-4 * kelvin + 1.28641212e-7 * square) / (1 + 8.42420235e-4 * kelvin + 7.08145163e-7 * square);
  const v = (0.317398726 + 4.22806245e-5 * kelvin + 4.20481691e-8 * square) / (1 - 2.89741816e-5 * kelvin + 1.61456053e-7 * square);
  // From CIE 1960 to CIE 1931.
  const below = 2 * u - 8 * v + 4;
  return { x: (3 * u) / below, y: (2 * v) / below };
}

/** XYZ to linear red, green, blue: IEC 61966-2-1. */
const TO_RGB: Matrix = [[3.2406, -1.5372, -0.4986], [-0.9689, 1.8758, 0.0415], [0.0557, -0.204, 1.057]];

/** Responses of the cones as they adapt, and back: the Bradford matrices (K. Lam, 1985; as in ICC.1, annex E). */
const TO_CONES: Matrix = [[0.8951, 0.2664, -0.1614], [-0.7502, 1.7135, 0.0367], [0.0389, -0.0685, 1.0296]];
const FROM_CONES: Matrix = [[0.9869929, -0.1470543, 0.1599627], [0.4323053, 0.5183603, 0.0492912], [-0.0085287, 0.0400428, 0.9684867]];

/** White of the display: D65 in CIE 1931, IEC 61966-2-1. */
const DISPLAY = { x: 0.3127, y: 0.329 } as const;

/** Light of a colour temperature as it looks to an eye or camera to which `white` (K) is white; of luminance 1. */
export function lightColour(kelvin: number, white: number): Rgb {
  const [seen, adapted, display] = [blackBody(kelvin), blackBody(white), DISPLAY].map((at) => times(TO_CONES, ofChromaticity(at))) as [Three, Three, Three];
  const cones = seen.map((cone, i) => (cone * display[i]!) / adapted[i]!) as unknown as Three;
  const xyz = times(FROM_CONES, cones);
  const rgb = times(TO_RGB, xyz);
  return rgb.map((part) => Math.max(0, part / xyz[1])) as unknown as Rgb;
}

const ofChromaticity = ({ x, y }: { readonly x: number; readonly y: number }): Three => [x / y, 1, (1 - x - y) / y];

const times = (matrix: Matrix, [a, b, c]: Three): Three => matrix.map(([p, q, r]) => p * a + q * b + r * c) as unknown as Three;
