import { type Path, polylinePath, regionArea } from '../../geometry/index.ts';
import type { HoldDown, Holding, Support } from '../../machining/index.ts';
import { amount } from '../check.ts';
import { type ShapedItem, type ShapedLayer, circlePath } from './shapes.ts';

/** Where the sheet is held and carried: hold-downs with the discs to keep out of, held areas, and bars beside the bed. */
export function shapeHolding({ holdDowns, areas, supports }: Holding): readonly ShapedLayer[] {
  return [
    { kind: 'supports', name: 'supports', items: supports.map(supportItem) },
    { kind: 'region', name: 'held area', items: areas.filter(({ region }) => region.loops.length > 0).map(({ kind, region }): ShapedItem => ({ shape: { loops: region.loops }, title: () => `held by ${kind}, ${amount(regionArea(region) / 100, 'cm2')}` })) },
    { kind: 'hold-downs', name: 'hold-downs', items: holdDowns.map(holdDownItem) },
  ];
}

function holdDownItem({ kind, at, keepOut, height, setUps }: HoldDown, i: number): ShapedItem {
  return { shape: { paths: [circlePath(at, keepOut / 2)] }, ...(setUps && { setUps }), title: () => `${kind} ${i + 1}, keep out ${amount(keepOut, 'mm')}, ${amount(height, 'mm')} high${inSetUps(setUps)}` };
}

function supportItem(support: Support, i: number): ShapedItem {
  const { setUp, axis, at } = support;
  return { shape: { paths: [supportPath(support)] }, setUps: [setUp], label: 'support', title: () => `support ${i + 1} under the sheet at ${axis} ${amount(Math.round(at * 10) / 10, 'mm')} in set-up ${setUp + 1}` };
}

function inSetUps(setUps: readonly number[] | undefined): string {
  return setUps === undefined || setUps.length === 0 ? '' : `, in set-up ${setUps.map((setUp) => setUp + 1).join(' and ')}`;
}

/** The bar across the sheet; a single place where its length is not known. */
function supportPath({ axis, at, length = 0 }: Support): Path {
  return polylinePath(axis === 'x' ? [{ x: at, y: 0 }, { x: at, y: length }] : [{ x: 0, y: at }, { x: length, y: at }], false);
}
