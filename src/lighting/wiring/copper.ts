/** Copper of 100 % IACS at 20 C: resistivity, ohm m, and rise of the resistance, 1/K (IEC 60028:1925). */
export const RESISTIVITY = 1.7241e-8;
const TEMPERATURE_COEFFICIENT = 0.00393;

/** What a resistance at 20 C becomes `rise` K above it. */
export const warmer = (resistance: number, rise: number): number => resistance * (1 + TEMPERATURE_COEFFICIENT * rise);

/** What a resistance of copper measured at so many degrees Celsius is at 20 C (IEC 60228, annex). */
export const at20 = (resistance: number, celsius: number): number => (resistance * 254.5) / (234.5 + celsius);

/** Diameter of an American wire gauge number, mm (ASTM B258). */
export const gaugeDiameter = (gauge: number): number => 0.127 * 92 ** ((36 - gauge) / 39);

/** Cross-section, mm2. */
export const gaugeArea = (gauge: number): number => (Math.PI / 4) * gaugeDiameter(gauge) ** 2;

/** Of solid copper of that gauge at 20 C, ohm/km. */
export const gaugeResistance = (gauge: number): number => (RESISTIVITY / (gaugeArea(gauge) * 1e-6)) * 1000;
