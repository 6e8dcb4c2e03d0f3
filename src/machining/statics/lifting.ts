import type { Stock } from '../job/stock.ts';

/** Weights that one person, and two, should lift at most, kg (common practice, no source; local rules go first). */
const ONE_PERSON = 20;
const TWO_PEOPLE = 40;

/** kg. */
export const sheetWeight = ({ width, height, thickness, density }: Stock): number => width * height * thickness * 1e-9 * density;

/** How many people lift a weight of so many kg. */
export const peopleToLift = (weight: number): number => (weight <= ONE_PERSON ? 1 : weight <= TWO_PEOPLE ? 2 : Math.ceil(weight / ONE_PERSON));
