/** An end mill and how it is driven. Lengths mm, feeds mm/min, spindle speed 1/min. */
export interface Cutter {
  readonly name: string;
  readonly diameter: number;
  readonly flutes: number;
  /** Chip load: advance per tooth, mm. */
  readonly chipLoad: number;
  readonly spindleSpeed: number;
  readonly feedRate: number;
  /** Feed straight down, for cutters that cut at their centre. */
  readonly plungeFeed: number;
  /** Greatest depth of cut per pass, mm. */
  readonly depthOfCut: number;
  /** Length of the cutting edge, mm: no pass may be deeper. */
  readonly cuttingLength: number;
  /** Greatest angle of a ramped entry, degrees. */
  readonly rampAngle: number;
}
