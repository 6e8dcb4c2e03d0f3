import { type Dowel, type Pin, type Registration, holePath } from '../../machining/index.ts';
import { amount } from '../check.ts';
import { type ShapedItem, type ShapedLayer, circlePath } from './shapes.ts';

/** Pins where they stand in the spoilboard, and the holes of the sheet that come to lie on them. */
export function shapeRegistration({ pins, dowels }: Registration): readonly ShapedLayer[] {
  return [
    { kind: 'dowels', name: 'dowel holes', items: dowels.map(dowelItem) },
    { kind: 'pins', name: 'pins', items: pins.map(pinItem) },
  ];
}

function dowelItem({ hole, pin, drilledIn, usedIn, lies }: Dowel, i: number): ShapedItem {
  const what = hole.slot ? 'dowel slot' : 'dowel hole';
  return {
    shape: { paths: [holePath(hole)] }, setUps: [drilledIn],
    title: () => `${what} ${i + 1}, ${amount(hole.diameter, 'mm')}, in the ${lies}: drilled in set-up ${drilledIn + 1}, on pin ${pin + 1} in set-up ${usedIn + 1}`,
  };
}

const pinItem = ({ at, diameter }: Pin, i: number): ShapedItem =>
  ({ shape: { paths: [circlePath(at, diameter / 2)] }, fixed: true, label: `pin ${i + 1}`, title: () => `pin ${i + 1} in the spoilboard, ${amount(diameter, 'mm')}` });
