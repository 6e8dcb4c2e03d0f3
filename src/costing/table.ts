import { csvLine } from './csv.ts';
import type { Materials } from './materials.ts';

/** The bill as comma-separated text: a head, then a row for each part; `counts` is yes for what is bought or spent. */
export const billTable = ({ rows }: Materials): string =>
  [['part', 'item', 'quantity', 'unit', 'counts'], ...rows.map(({ part, item, quantity, unit, counts }) => [part, item, quantity, unit, counts ? 'yes' : 'no'])].map(csvLine).join('');
