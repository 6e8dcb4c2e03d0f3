import { type Carried, type LayerKind, type Picture, junctionsOf, layerKey, pictureOf, spotsOf } from '../../values/index.ts';
import type { Desk } from './desk.ts';
import { sameValues } from './node-report.ts';
import type { NodePicture } from './protocol.ts';
import { jobAt, jobSetUps } from './set-ups.ts';

export interface Painter {
  /** The picture of a node's last values; undefined when it has no result. The same object while the values are the same. */
  readonly picture: (node: string) => NodePicture | undefined;
}

/** Draws nodes' values large. The last picture is kept: asked for again, it is there. */
export function makePainter(desk: Desk): Painter {
  let last: { readonly values: readonly Carried[]; readonly picture: NodePicture } | undefined;
  return {
    picture(node) {
      if (desk.result(node) === undefined) return undefined;
      const [outputs, inputs] = [desk.outputs(node), desk.inputs(node)];
      const job = jobAt(desk, node);
      const values = [...outputs, ...inputs, ...Object.values(job)];
      if (last?.picture.node !== node || !sameValues(last.values, values)) last = { values, picture: paint(node, outputs, inputs, jobSetUps(job)) };
      return last.picture;
    },
  };
}

function paint(node: string, outputs: readonly Carried[], inputs: readonly Carried[], setUps: NodePicture['setUps']): NodePicture {
  const [above, below] = [pictureOf(outputs), pictureOf(inputs)];
  return { node, ...overlaid(above, below), spots: spotsOf(outputs), junctions: junctionsOf(outputs), playable: [...outputs, ...inputs].some(isPlayable), ...(setUps && { setUps }) };
}

/** Where nothing is drawn over what came in, as with a check, that is the picture itself and need not be faint. */
function overlaid(outputs: Picture, inputs: Picture): Pick<NodePicture, 'outputs' | 'inputs'> {
  if (outputs.layers.length === 0 && inputs.layers.length > 0)
    return { outputs: { ...inputs, lines: outputs.lines.length > 0 ? outputs.lines : inputs.lines }, inputs: [] };
  const drawn = new Set(outputs.layers.map(layerKey));
  return { outputs, inputs: inputs.layers.filter((layer) => !OF_WHAT_CAME_OUT.has(layer.kind) && !drawn.has(layerKey(layer))) };
}

/** Told where it comes out, and there alone: beneath what was made of it, it would only be in the way. */
const OF_WHAT_CAME_OUT: ReadonlySet<LayerKind> = new Set(['junctions', 'doubts']);

function isPlayable({ type, value }: Carried): boolean {
  return type === 'set-ups' && (value as readonly { readonly programs: readonly unknown[] }[]).some(({ programs }) => programs.length > 0);
}
