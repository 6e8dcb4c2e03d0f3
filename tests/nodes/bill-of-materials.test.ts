import { expect, it } from 'vitest';
import billOfMaterials from '../../nodes/bill-of-materials.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_LIGHTING, EXAMPLE_STOCK } from '../../src/values/examples.ts';
import { outputsOf } from '../support/run-node.ts';

const inputs = { stock: EXAMPLE_STOCK, board: EXAMPLE_BOARD, channel: EXAMPLE_CHANNEL, holes: [[{ centre: { x: 60, y: 60 }, diameter: 6, purpose: 'mounting' as const }]], lighting: EXAMPLE_LIGHTING, setups: undefined };

it('writes the table under its name, and tells the totals in it', () => {
  const { files, quantities, materials } = outputsOf(billOfMaterials, inputs, { file: 'to-order.csv' });
  expect(files).toMatchObject([{ path: 'to-order.csv', text: expect.stringContaining('fixing,Fixing for a 6 mm hole,1,count,yes\r\n') as string }]);
  expect(quantities).toMatchObject({ sheetBought: { value: 0.08, unit: 'm2' }, stripBought: { value: 0.2 }, fixingsBought: { value: 1 } });
  expect(materials.setUps).toBe(0);
});

it('says nothing of light where there is none', () => {
  expect(outputsOf(billOfMaterials, { ...inputs, lighting: undefined }).quantities).not.toHaveProperty('stripBought');
});
