import { type Controller } from '../job/machine.ts';

/** Coordinates beyond this, in mm, are a mistake: no sheet and no machine is a kilometre long. */
const FURTHEST = 1e6;
const INCH = 25.4;

/** Length of the controller's unit in mm. */
export const unitLength = ({ units }: Controller): number => (units === 'inch' ? INCH : 1);

/** Decimals of a feed word: a tenth of a millimetre, or about a quarter of one. */
export const feedDecimals = ({ units }: Controller): number => (units === 'inch' ? 2 : 1);

/** One unit of the last decimal of a coordinate word, in mm. */
export const lastDecimal = (controller: Controller): number =>
  unitLength(controller) / 10 ** controller.decimals;

/** How far, in mm, an arc's two radii may differ: 0.002 mm, or 0.0002 inch where inches are spoken. NISTIR 6556, 3.5.3.2. */
export const radiusLimit = ({ units }: Controller): number => (units === 'inch' ? 0.0002 * INCH : 0.002);

/** The length nearest to `value` (mm) that the controller's words can say. Throws a RangeError on what is no coordinate. */
export function roundLength(value: number, controller: Controller): number {
  if (!(Math.abs(value) <= FURTHEST)) throw new RangeError(`not a coordinate: ${value} mm`);
  const scale = 10 ** controller.decimals;
  // Adding 0 turns -0 into 0.
  return (Math.round((value / unitLength(controller)) * scale) / scale) * unitLength(controller) + 0;
}

/** The feed nearest to `value` (mm/min) that the controller's words can say, never 0. Throws a RangeError on what is no feed. */
export function roundFeed(value: number, controller: Controller): number {
  if (!(value > 0 && value <= FURTHEST)) throw new RangeError(`not a feed: ${value} mm/min`);
  const scale = 10 ** feedDecimals(controller);
  return (Math.max(1, Math.round((value / unitLength(controller)) * scale)) / scale) * unitLength(controller);
}
