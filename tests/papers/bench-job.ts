import { outputsOf } from '../support/run-node.ts';
import { cutter, line, machine, rectangle } from '../support/shapes.ts';
import checkHolding from '../../nodes/check-holding.ts';
import checkOverhang from '../../nodes/check-overhang.ts';
import emitProgram from '../../nodes/emit-program.ts';
import groovePasses from '../../nodes/groove-passes.ts';
import holdDown from '../../nodes/hold-down.ts';
import holePasses from '../../nodes/hole-passes.ts';
import orderPasses from '../../nodes/order-passes.ts';
import outlinePasses from '../../nodes/outline-passes.ts';
import registrationNode from '../../nodes/registration.ts';
import setWidth from '../../nodes/set-width.ts';
import tileStock from '../../nodes/tile-stock.ts';
import { type Hole, type Stock } from '../../src/machining/index.ts';

export const stock: Stock = { width: 2400, height: 600, thickness: 12, thicknessTolerance: 0.2, density: 1190, breakthrough: 0.3 };

/** A wave of a groove along a long board, with cable and mounting holes, planned and programmed by the nodes themselves. */
export function benchJob() {
  const wave = Array.from({ length: 12 }, (_, i) => [160 + i * 188, i % 2 === 0 ? 160 : 430] as const);
  const { channel } = outputsOf(setWidth, { strokes: [{ path: line(...wave) }, { path: line([200, 520], [2200, 520]) }] }, { width: 10, depth: 6 });
  const board = rectangle(80, 70, 2240, 480);
  const mounting = ([[110, 100], [1200, 100], [2290, 100], [110, 520], [1200, 545 - 10], [2290, 520]] as const).map(([x, y], i): Hole =>
    ({ centre: { x, y }, diameter: 6, purpose: 'mounting', ...(i % 3 !== 1 && { slot: { length: 3, angle: 0 } }) }));
  const cable: Hole[] = [{ centre: { x: 160, y: 160 }, diameter: 6, purpose: 'cable' }];
  const small = { ...cutter, name: '4 mm cutter', diameter: 4, spindleSpeed: 16000, feedRate: 1600, depthOfCut: 2 };
  const holes = [...mounting, ...cable];
  const base = { stock, machine, board, channel };
  const { tiling, checks: tileChecks } = outputsOf(tileStock, { ...base, cutters: [cutter, small], holes: [holes] });
  const plan = outputsOf(registrationNode, { ...base, tiling, cutter: small, holes: [holes] }, { pinDiameter: 6 });
  const { registration } = plan;
  const { holding } = outputsOf(holdDown, { stock, machine, board, tiling, cutters: [cutter, small], holes: [holes, plan.holes] }, { by: 'screws', keepOut: 30 });
  const grooves = outputsOf(groovePasses, { channel, cutter, machine, stock, tiling } as never).passes;
  const bored = outputsOf(holePasses, { holes: [holes, plan.holes], cutter: small, machine, stock, tiling } as never).passes;
  const outline = outputsOf(outlinePasses, { board, cutter, machine, stock, tiling } as never);
  const { passes } = outputsOf(orderPasses, { passes: [bored, grooves, outline.passes] } as never);
  const { setups } = outputsOf(emitProgram, { passes, machine, tiling, registration }, { name: 'Market hall' });
  const checks = [
    tileChecks, plan.checks, outputsOf(checkOverhang, { tiling, stock, machine, holding }).checks,
    outputsOf(checkHolding, { setups, tiling, holding, board, tabs: outline.tabs } as never).checks,
  ];
  return { ...base, setups, tiling, holes: [holes], registration, holding, checks };
}
