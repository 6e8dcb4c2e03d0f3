import { type Affine, identity, multiply, rotation, scaling, skewX, skewY, translation } from '../geometry/index.ts';
import { PX_PER_UNIT } from './length.ts';

const FUNCTION = /[\s,]*([a-zA-Z][a-zA-Z0-9]*)\s*\(([^()]*)\)/y;
const ARGUMENT = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)([a-zA-Z%]*)$/;

type Units = Readonly<Record<string, number>>;

const DEGREES_PER: Units = { '': 1, deg: 1, grad: 0.9, rad: 180 / Math.PI, turn: 360 };
const RATIO: Units = { '': 1, '%': 0.01 };

interface TransformFunction {
  /** The units of each argument; the list's length is the greatest number of them. */
  readonly units: readonly Units[];
  readonly least: number;
  readonly make: (...values: number[]) => Affine;
}

const around = (degrees: number, x: number, y: number): Affine =>
  multiply(translation(x, y), multiply(rotation(degrees), translation(-x, -y)));

/** The functions of SVG 1.1 (section 7.6) and the two-dimensional ones of CSS Transforms 1 (section 11). */
const FUNCTIONS: Readonly<Record<string, TransformFunction>> = {
  matrix: { units: Array<Units>(6).fill(PX_PER_UNIT), least: 6, make: (a = 1, b = 0, c = 0, d = 1, e = 0, f = 0) => [a, b, c, d, e, f] },
  translate: { units: [PX_PER_UNIT, PX_PER_UNIT], least: 1, make: (x = 0, y = 0) => translation(x, y) },
  translatex: { units: [PX_PER_UNIT], least: 1, make: (x = 0) => translation(x, 0) },
  translatey: { units: [PX_PER_UNIT], least: 1, make: (y = 0) => translation(0, y) },
  scale: { units: [RATIO, RATIO], least: 1, make: (x = 1, y = x) => scaling(x, y) },
  scalex: { units: [RATIO], least: 1, make: (x = 1) => scaling(x, 1) },
  scaley: { units: [RATIO], least: 1, make: (y = 1) => scaling(1, y) },
  rotate: { units: [DEGREES_PER, PX_PER_UNIT, PX_PER_UNIT], least: 1, make: (degrees = 0, x = 0, y = 0) => around(degrees, x, y) },
  skewx: { units: [DEGREES_PER], least: 1, make: (degrees = 0) => skewX(degrees) },
  skewy: { units: [DEGREES_PER], least: 1, make: (degrees = 0) => skewY(degrees) },
  skew: {
    units: [DEGREES_PER, DEGREES_PER], least: 1,
    make: (x = 0, y = 0) => [1, Math.tan((y * Math.PI) / 180), Math.tan((x * Math.PI) / 180), 1, 0, 0],
  },
};

function readFunction(name: string, text: string): Affine | undefined {
  const found = FUNCTIONS[name.toLowerCase()];
  const words = text.replace(/([^eE,\s])(?=[+-])/g, '$1 ').split(/[\s,]+/).filter((word) => word !== '');
  if (!found || words.length < found.least || words.length > found.units.length) return undefined;
  // A turn about a point needs both its coordinates.
  if (name.toLowerCase() === 'rotate' && words.length === 2) return undefined;
  const values = words.map((word, i) => {
    const [, number = 'NaN', unit = ''] = ARGUMENT.exec(word) ?? [];
    return Number(number) * (found.units[i]?.[unit.toLowerCase()] ?? NaN);
  });
  return values.some(Number.isNaN) ? undefined : found.make(...values);
}

/**
 * Reads a list of transform functions, the leftmost outermost. Lengths in px, angles in degrees unless a unit is given.
 * Nothing when any part is malformed or three-dimensional: the whole list is void then, as the standards have it.
 */
export function parseTransformList(text: string): Affine | undefined {
  const trimmed = text.trim();
  if (trimmed === '' || trimmed === 'none') return identity;
  let result: Affine = identity;
  FUNCTION.lastIndex = 0;
  let end = 0;
  for (let found = FUNCTION.exec(trimmed); found; found = FUNCTION.exec(trimmed)) {
    const inner = readFunction(found[1] ?? '', found[2] ?? '');
    if (!inner) return undefined;
    result = multiply(result, inner);
    end = FUNCTION.lastIndex;
  }
  return end === trimmed.length ? result : undefined;
}
