import type { PortType, PortTypes } from '../../runtime/index.ts';
import { type Carried, type PictureLayer, type PictureSetUps, layerKey, pictureOf, pictureSetUps } from '../../values/index.ts';
import { carriedAbove, nodesBelow } from './above.ts';
import type { Desk } from './desk.ts';

/** What a node's values belong to: the set-ups as planned, and the machine. */
export interface Job {
  readonly tiling?: Carried;
  readonly machine?: Carried;
}

/** Values that belong to set-ups, even where the plan of these does not come along. */
const OF_SET_UPS: ReadonlySet<PortType> = new Set(['tiling', 'set-ups', 'passes', 'registration', 'holding']);

/** Nothing for a node none of whose values has to do with set-ups. */
export function jobAt(desk: Desk, node: string): Job {
  if (![...desk.outputs(node), ...desk.inputs(node)].some(({ type }) => OF_SET_UPS.has(type))) return {};
  const [tiling, machine] = [carriedAbove(desk, node, 'tiling'), carriedAbove(desk, node, 'machine')];
  return { ...(tiling && { tiling }), ...(machine && { machine }) };
}

/** The set-ups one by one; undefined where there are not several. */
export const jobSetUps = ({ tiling, machine }: Job): PictureSetUps | undefined =>
  tiling && pictureSetUps(tiling.value as PortTypes['tiling'], (machine?.value as PortTypes['machine'] | undefined)?.bedMargin);

/** What comes after the plan of the set-ups and is drawn of them besides what the node shown has of it. */
const LATER: readonly PortType[] = ['holding', 'registration', 'set-ups'];

/** What there is in a node's set-ups, from wherever it comes out: the work they were planned for, and the last of each value made for them. */
export function layersAround(desk: Desk, node: string): readonly PictureLayer[] {
  const { tiling } = jobAt(desk, node);
  const maker = desk.document().nodes.find(({ id }) => tiling !== undefined && desk.outputs(id).some(({ value }) => value === tiling.value));
  if (maker === undefined) return [];
  const after = nodesBelow(desk, maker.id).flatMap((id) => desk.outputs(id));
  const carried = [...desk.inputs(maker.id).filter(({ type }) => type !== 'machine'), ...LATER.flatMap((type) => after.findLast((one) => one.type === type) ?? [])];
  const own = new Set([...desk.outputs(node), ...desk.inputs(node)].flatMap((one) => pictureOf([one]).layers.map(layerKey)));
  return pictureOf(carried).layers.filter((layer) => !own.has(layerKey(layer)));
}
