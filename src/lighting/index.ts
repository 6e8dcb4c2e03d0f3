export * from './strip-length.ts';
export * from './strip.ts';
export * from './tube.ts';
export type * from './types.ts';
export { type Layout, type LayoutRequest, planLayout, runCurrentLimit } from './layout/plan-layout.ts';
export { SELV_VOLTS, classTwo, touchVolts } from './wiring/limits.ts';
export { type WiringRequest, planWiring } from './wiring/plan-wiring.ts';
export { CLASS_5, GAUGES } from './wiring/wire-sizes.ts';
