import { billOf } from '../costing/bill.ts';
import type { Materials } from '../costing/materials.ts';
import { type Price, priceOf, type Rates } from '../costing/price.ts';
import type { Stroke } from '../artwork/artwork.ts';
import type { Region } from '../geometry/region.ts';
import type { Lighting } from '../lighting/types.ts';
import type { Strip } from '../lighting/strip.ts';
import type { Tube } from '../lighting/tube.ts';
import type { Channel } from '../machining/job/channel.ts';
import type { Cutter } from '../machining/job/cutter.ts';
import type { Router } from '../machining/job/machine.ts';
import type { Stock } from '../machining/job/stock.ts';
import type { Tiling } from '../machining/job/tiling.ts';

/** Values for the examples of nodes: a small board with one straight groove, a 6 mm cutter, a bench router. */
export const EXAMPLE_STOCK: Stock = { width: 400, height: 200, thickness: 12, thicknessTolerance: 0.2, density: 1190, breakthrough: 0.3 };

export const EXAMPLE_CUTTER: Cutter = {
  name: '6 mm cutter', diameter: 6, flutes: 1, chipLoad: 0.1, spindleSpeed: 18000, feedRate: 1800, plungeFeed: 540, depthOfCut: 3, cuttingLength: 20, rampAngle: 3,
};

export const EXAMPLE_MACHINE: Router = {
  travelX: 900, travelY: 600, travelZ: 80, bedMargin: 80, rapidRate: 5000, greatestFeed: 4000, acceleration: 400, cornerDeviation: 0.02, spindleStart: 5,
  heights: { clearance: 10, retract: 2 },
  controller: {
    units: 'mm', arcs: 'centre', helicalArcs: true, decimals: 4, lineNumbers: false, percentLines: false, comments: 'parentheses',
    programEnd: 'M2', dwellUnit: 'seconds', longestLine: 70,
  },
};

/** The sheet cut in one set-up. */
export const EXAMPLE_TILING: Tiling = {
  tiles: [{ name: 'set-up 1', column: 0, row: 0, core: { minX: 0, minY: 0, maxX: 400, maxY: 200 }, window: { minX: 0, minY: 0, maxX: 400, maxY: 200 }, shift: [0, 0] }],
  seams: [], lap: 6, travel: [900, 600],
};

export const EXAMPLE_BOARD: Region = rectangle(50, 50, 300, 100);

export const EXAMPLE_CHANNEL: Channel = {
  centreLines: [{ start: { x: 100, y: 100 }, segments: [{ kind: 'line', end: { x: 300, y: 100 } }], closed: false }],
  region: rectangle(95, 95, 210, 10), width: 10, depth: 6, tolerance: 0.005,
};

/** Figures as such strips and tubes commonly have them (common practice, no source). */
export const EXAMPLE_STRIP: Strip = {
  wattsPerMetre: 10, volts: 24, moduleLength: 50, leastBend: 15, lies: 'on edge', width: 6, colourTemperature: 3000, lumensPerMetre: 800, railResistance: 0.05, greatestCurrent: 3,
};

export const EXAMPLE_TUBE: Tube = { width: 10, height: 10, leastBend: 15, wall: 1 };

/** One run of four modules in the straight groove, not yet wired to a supply. */
export const EXAMPLE_LIGHTING: Lighting = {
  strip: EXAMPLE_STRIP, tube: EXAMPLE_TUBE, dark: [], leads: [{ x: 200, y: 60 }],
  runs: [{
    pieces: [{
      stroke: 0, path: EXAMPLE_CHANNEL.centreLines[0]!, lit: EXAMPLE_CHANNEL.centreLines[0]!, modules: 4, cutLength: 200, unlitStart: 0, unlitEnd: 0,
    }],
    jumpers: [], feeds: [{ joint: 0, at: { x: 100, y: 100 } }], watts: 2, amps: 2 / 24,
  }],
};

/** Rates as they come: no prices. */
export const EXAMPLE_RATES: Rates = {
  of: { sheet: 1, strip: 1, tube: 1, wire: 1, supply: 1, fuse: 1, fixing: 1, machine: 1, bench: 1 }, margin: 0, tax: 0, taxName: 'Tax', currency: '', own: false,
};

export const EXAMPLE_MATERIALS: Materials = billOf({ stock: EXAMPLE_STOCK, board: rectangle(50, 50, 300, 100), channel: EXAMPLE_CHANNEL, holes: [], lighting: EXAMPLE_LIGHTING, setups: [], filling: 0.1 });

export const EXAMPLE_PRICE: Price = priceOf(EXAMPLE_MATERIALS, EXAMPLE_RATES, 60);

/** An axis-aligned rectangle as a region. */
export function rectangle(x: number, y: number, width: number, height: number): Region {
  return { loops: [[{ x, y }, { x: x + width, y }, { x: x + width, y: y + height }, { x, y: y + height }]] };
}

/** A stroke along one straight line. */
export const straightStroke = (fromX: number, fromY: number, toX: number, toY: number): Stroke =>
  ({ path: { start: { x: fromX, y: fromY }, segments: [{ kind: 'line', end: { x: toX, y: toY } }], closed: false } });
