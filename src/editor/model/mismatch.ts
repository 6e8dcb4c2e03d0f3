import type { GraphDocument, InputPort, OutputPort, PortType, Shapes } from '../../runtime/index.ts';
import { type End, nodeOf, portAt, portLabel, titleAt } from './graph.ts';

type Ports = Readonly<Record<string, InputPort | OutputPort>>;

/** Why what an output gives does not fit an input, and what would; undefined when it fits or either is unknown. */
export function mismatch(shapes: Shapes, document: GraphDocument, from: End, to: End): string | undefined {
  const [gives, takes] = [portAt(shapes, document, from)?.type, portAt(shapes, document, to)?.type];
  if (gives === undefined || takes === undefined || gives === takes) return undefined;
  const [giver, taker] = [titleAt(shapes, document, from.node), titleAt(shapes, document, to.node)];
  return `${giver} gives ${gives} here, but ${taker} takes ${takes} at "${portLabel(to.port, takes)}". ${advice(shapes, document, from, to)}`;
}

function advice(shapes: Shapes, document: GraphDocument, from: End, to: End): string {
  const [gives, takes] = [portAt(shapes, document, from)!.type, portAt(shapes, document, to)!.type];
  const shapeAt = ({ node }: End) => shapes.get(nodeOf(document, node)?.type ?? '');
  const input = firstOf(shapeAt(to)?.inputs, gives);
  if (input !== undefined) return `Lead the wire to its "${portLabel(input, gives)}" instead.`;
  const output = firstOf(shapeAt(from)?.outputs, takes);
  if (output !== undefined) return `Take the wire from "${portLabel(output, takes)}" of ${titleAt(shapes, document, from.node)} instead.`;
  const between = turning(shapes, gives, takes);
  return between === undefined ? `Lead it to an input that takes ${gives}.` : `Put the step "${between}" between them: it makes ${takes} from ${gives}.`;
}

const firstOf = (ports: Ports | undefined, type: PortType): string | undefined => Object.entries(ports ?? {}).find(([, port]) => port.type === type)?.[0];

/** The title of a step type that makes one type from another; of several the one that asks for least else. */
function turning(shapes: Shapes, from: PortType, to: PortType): string | undefined {
  const able = [...shapes.values()].filter(({ inputs, outputs }) => firstOf(inputs, from) !== undefined && firstOf(outputs, to) !== undefined);
  const asked = (inputs: Readonly<Record<string, InputPort>>) => Object.values(inputs).filter(({ optional }) => optional !== true).length;
  return able.sort((a, b) => asked(a.inputs) - asked(b.inputs))[0]?.title;
}
