import { type Controller, type Machine } from '../../src/machining/job/machine.ts';
import { type Cutter } from '../../src/machining/job/cutter.ts';

export const controller: Controller = {
  units: 'mm', arcs: 'centre', helicalArcs: true, decimals: 4, lineNumbers: false, percentLines: false, comments: 'parentheses',
  programEnd: 'M30', dwellUnit: 'seconds', longestLine: 70,
};

export const machine: Machine = {
  travelX: 600, travelY: 400, travelZ: 80, rapidRate: 5000, greatestFeed: 4000, acceleration: 500, cornerDeviation: 0.02,
  spindleStart: 3, controller,
};

export const flat6: Cutter = {
  name: 'flat end mill', diameter: 6, flutes: 1, chipLoad: 0.1, spindleSpeed: 18000, feedRate: 1800, plungeFeed: 500,
  depthOfCut: 3, cuttingLength: 20, rampAngle: 3,
};
