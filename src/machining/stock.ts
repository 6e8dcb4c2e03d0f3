/** The sheet on the bench, its lower left corner at the drawing's origin. Millimetres, density kg/m3. */
export interface Stock {
  readonly width: number;
  readonly height: number;
  /** Measured thickness. */
  readonly thickness: number;
  /** The sheet may be thinner or thicker than measured by this much, elsewhere. */
  readonly thicknessTolerance: number;
  readonly density: number;
}
