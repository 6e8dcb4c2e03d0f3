export * from './strip.ts';
export * from './tube.ts';
export type * from './types.ts';
export { type Layout, type LayoutRequest, planLayout, runCurrentLimit } from './layout/plan-layout.ts';
