import type { WireSize } from '../types.ts';
import { gaugeArea, gaugeResistance } from './copper.ts';

/**
 * Flexible wires, thinnest first. IEC 60228:2004 table 3, class 5, plain copper: greatest resistance at 20 C. Ampacities as flexible cords of such
 * sizes carry them, from memory and to be looked up in the local code.
 */
export const CLASS_5: readonly WireSize[] = [
  { name: '0.5 mm²', area: 0.5, ohmsPerKm: 39, ampacity: 3 },
  { name: '0.75 mm²', area: 0.75, ohmsPerKm: 26, ampacity: 6 },
  { name: '1 mm²', area: 1, ohmsPerKm: 19.5, ampacity: 10 },
  { name: '1.5 mm²', area: 1.5, ohmsPerKm: 13.3, ampacity: 16 },
  { name: '2.5 mm²', area: 2.5, ohmsPerKm: 7.98, ampacity: 20 },
];

/** American wire gauges, thinnest first: size and resistance by ASTM B258 from IEC 60028 copper. Ampacities from memory, as above. */
export const GAUGES: readonly WireSize[] = ([[24, 2], [22, 3], [20, 5], [18, 7], [16, 10], [14, 15]] as const).map(([gauge, ampacity]) => ({
  name: `AWG ${gauge}`, area: gaugeArea(gauge), ohmsPerKm: gaugeResistance(gauge), ampacity,
}));
