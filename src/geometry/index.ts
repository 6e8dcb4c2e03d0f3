export * from './arc.ts';
export * from './box.ts';
export * from './cubic.ts';
export * from './flatten.ts';
export * from './path.ts';
export * from './point.ts';
export * from './transform.ts';
