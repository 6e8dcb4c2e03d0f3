export * from './bill.ts';
export * from './csv.ts';
export * from './materials.ts';
export * from './money.ts';
export * from './price.ts';
export * from './table.ts';
