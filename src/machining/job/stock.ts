/** The sheet on the bench, its lower left corner at the drawing's origin. Millimetres, density kg/m3. */
export interface Stock {
  readonly width: number;
  readonly height: number;
  /** Measured thickness. */
  readonly thickness: number;
  /** The sheet may be thinner or thicker than measured by this much, elsewhere. */
  readonly thicknessTolerance: number;
  readonly density: number;
  /** How far cuts through the sheet may enter the spoilboard, below the thickest sheet. */
  readonly breakthrough: number;
}

/** Depth of a cut that goes through the sheet wherever its thickness is within tolerance, mm below the top face. */
export function throughDepth(stock: Stock): number {
  return stock.thickness + stock.thicknessTolerance + stock.breakthrough;
}
