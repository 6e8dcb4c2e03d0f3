import './types.ts';

export * from './check.ts';
export * from './describe.ts';
export * from './report.ts';
export * from './results.ts';
export type * from './picture.ts';
