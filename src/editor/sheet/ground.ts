import { type EditorState, editor } from '../state/editor.ts';
import type { NodeReport } from '../worker/protocol.ts';
import { ask } from '../worker/client.ts';
import { setGround } from './camera.ts';
import { isGround, layersOf } from './shapes.ts';
import { nodesAfter, sheetMakers } from './space.ts';

/** The sheet-making node that what is shown lies on the sheet of; undefined where the picture shows a sheet itself or lies on none. */
export function groundNode({ picture, history: { document }, shapes }: Pick<EditorState, 'picture' | 'history' | 'shapes'>): string | undefined {
  if (!picture || layersOf(picture).some(isGround)) return undefined;
  return sheetMakers(document, shapes).find((id) => nodesAfter(document, [id]).has(picture.node));
}

/** Draws the sheet beneath values that lie on one. Returns how to stop. */
export function followGround(): () => void {
  let [node, report]: [string | undefined, NodeReport | undefined] = [undefined, undefined];
  const follow = (state: EditorState) => {
    const wanted = groundNode(state);
    const newest = wanted === undefined ? undefined : state.reports.get(wanted);
    if (wanted === node && newest === report) return;
    [node, report] = [wanted, newest];
    if (wanted === undefined || newest === undefined) setGround([]);
    else void fetchGround(wanted, () => node === wanted && report === newest);
  };
  follow(editor.getState());
  return editor.subscribe((state, before) => {
    if (state.picture !== before.picture || state.reports !== before.reports) follow(state);
  });
}

/** Without an answer what is shown lies on nothing, as before the sheet was known. */
async function fetchGround(node: string, stillWanted: () => boolean): Promise<void> {
  const picture = await ask('picture', { node }).catch(() => undefined);
  if (stillWanted()) setGround(picture?.outputs.layers.filter(isGround) ?? []);
}
