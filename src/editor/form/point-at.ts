import { editor, show } from '../state/editor.ts';

/** The sheet marks the entry of a list that is pointed at; asked to go there, it shows the node. */
export function pointAt(node: string, param: string, index: number | undefined, goes: boolean): void {
  if (goes) show(node);
  editor.setState({ pointed: index === undefined ? undefined : { node, param, index, goes }, ...(goes && { spot: undefined }) });
}
