import type { LayerKind } from '../../values/picture.ts';
import { editor } from '../state/editor.ts';
import { ask } from '../worker/client.ts';
import { contains, nearestOn } from './near.ts';
import { aloneOf, layersSeen } from './set-ups.ts';
import { layersOf, shapeOf } from './shapes.ts';
import { frameOf, sheet } from './store.ts';
import type { Point } from './view.ts';

/** Milliseconds the pointer rests before something is measured under it. */
const REST = 160;
/** Pixels around the pointer that count as under it. */
const REACH = 12;

let timer: ReturnType<typeof setTimeout> | undefined;
let asked = 0;

/** Measures at a place of the sheet when the pointer has rested there; what was asked before is no longer wanted. */
export function probeSoon(at: Point): void {
  stopProbing();
  timer = setTimeout(() => void probe(at), REST);
}

/** Forgets what was measured, and whatever is still on its way. */
export function stopProbing(): void {
  clearTimeout(timer);
  asked += 1;
  const { readings, under } = sheet.getState();
  if (readings.length > 0 || under !== undefined) sheet.setState({ readings: [], under: undefined });
}

async function probe(at: Point): Promise<void> {
  const { picture, gesturing } = editor.getState();
  if (!picture || gesturing) return;
  const mine = asked;
  const within = REACH / frameOf(sheet.getState()).scale;
  sheet.setState({ under: itemUnder(at, within / 2) });
  // A question that cannot be answered any more, because the values changed meanwhile, has no reading.
  const readings = await ask('probe', { node: picture.node, at: [at.x, at.y], within }).catch(() => []);
  if (mine === asked) sheet.setState({ readings });
}

/** Kinds of layer told where they are pointed at anywhere within. */
const SURFACES: ReadonlySet<LayerKind> = new Set(['groove', 'outlines', 'hold-downs', 'pins']);

/** What lies under a place, in the item's own words: the last drawn of those hit, and lines before surfaces. */
function itemUnder(at: Point, within: number): string | undefined {
  const { picture } = editor.getState();
  if (!picture) return undefined;
  const { hidden, around, setUp } = sheet.getState();
  const items = layersSeen([...around, ...layersOf(picture)], aloneOf(picture, setUp)).filter(({ kind, name }) => kind !== 'sheet' && !hidden.has(name)).flatMap(({ kind, items: list }) => list.map((item) => ({ kind, item }))).reverse();
  const line = items.find(({ item }) => item.title !== undefined && nearestOn(shapeOf(item), at, within));
  const surface = items.find(({ kind, item }) => item.title !== undefined && SURFACES.has(kind) && contains(shapeOf(item), at));
  return (line ?? surface)?.item.title;
}
