export * from './compare.ts';
export * from './curves.ts';
export * from './disturb.ts';
export * from './shapes-joints.ts';
export * from './shapes-plain.ts';
export * from './sweep.ts';
export * from './truth.ts';
export * from './words.ts';
