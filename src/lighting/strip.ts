/** LED strip as it is bought, and how it lies in the groove. Lengths mm. */
export interface Strip {
  /** Power of a metre at the rated voltage, W/m. */
  readonly wattsPerMetre: number;
  /** Rated voltage, V, direct current. */
  readonly volts: number;
  /** The strip may be cut only at multiples of this. */
  readonly moduleLength: number;
  /** Tightest bend in the plane of the board, as the strip `lies`. */
  readonly leastBend: number;
  /** A strip bends across its face, not within it: on edge it follows letters; flat only where it is made to be bent sideways. */
  readonly lies: 'on edge' | 'flat';
  readonly width: number;
  /** Correlated colour temperature, K. */
  readonly colourTemperature: number;
  /** Luminous flux of a metre, lm/m. */
  readonly lumensPerMetre: number;
  /** Resistance of both supply rails together, there and back, ohm/m at 20 C. */
  readonly railResistance: number;
  /** Most current one feed may send into it, A. */
  readonly greatestCurrent: number;
}

/** Current of a millimetre of strip, A/mm. */
export const ampsPerMillimetre = ({ wattsPerMetre, volts }: Strip): number => wattsPerMetre / volts / 1000;
