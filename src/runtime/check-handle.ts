import type { Handle, Outputs } from './node.ts';
import { checkValue } from './param-values.ts';
import type { Param, Params } from './params.ts';
import { formatProblem } from './problem.ts';

/** Throws an Error when a handle names what its node does not have, or parameters it cannot set: a mistake of the node's author. */
export function checkHandle(node: string, handle: Handle, outputs: Outputs, params: Params): void {
  const fault = faultOf(handle, outputs, params);
  if (fault !== undefined) throw new Error(`Node "${node}", handle "${handle.kind}": ${fault}`);
}

function faultOf(handle: Handle, outputs: Outputs, params: Params): string | undefined {
  switch (handle.kind) {
    case 'places': return placesFault(handle, outputs, params);
    case 'edits': return editsFault(handle, outputs, params);
    case 'move': return moveFault(handle, outputs, params);
  }
}

function editsFault({ param, junctions }: Extract<Handle, { kind: 'edits' }>, outputs: Outputs, params: Params): string | undefined {
  if (own(params, param)?.kind !== 'edits') return `"${param}" is not a parameter that takes edits.`;
  return own(outputs, junctions)?.type === JUNCTIONS ? undefined : `"${junctions}" is not an output of type ${JUNCTIONS}.`;
}

/** The type of value that gestures find their places in. The runtime knows it by its name alone. */
const JUNCTIONS: string = 'junctions';

function placesFault({ param, from, sets = {} }: Extract<Handle, { kind: 'places' }>, outputs: Outputs, params: Params): string | undefined {
  if (own(params, param)?.kind !== 'points') return `"${param}" is not a parameter that takes points.`;
  if (from !== undefined && own(outputs, from.split('.', 1)[0]!) === undefined) return `there is no output "${from}".`;
  return Object.entries(sets).map(([name, value]) => settingFault(own(params, name), name, value)).find((fault) => fault !== undefined);
}

function settingFault(param: Param | undefined, name: string, value: unknown): string | undefined {
  if (param === undefined) return `there is no parameter "${name}".`;
  const fault = checkValue(param, value);
  return fault && `bad value of "${name}": ${formatProblem(fault)}`;
}

function moveFault({ outputs: moved, x, y }: Extract<Handle, { kind: 'move' }>, outputs: Outputs, params: Params): string | undefined {
  const missing = moved.find((port) => own(outputs, port) === undefined);
  if (missing !== undefined) return `there is no output "${missing}".`;
  if (x === y) return `"${x}" cannot shift along x and y.`;
  const unfit = [x, y].find((name) => !isLength(own(params, name)));
  return unfit && `"${unfit}" is not a number in mm.`;
}

function isLength(param: Param | undefined): boolean {
  return param?.kind === 'number' && param.unit === 'mm';
}

function own<T>(members: Readonly<Record<string, T>>, name: string): T | undefined {
  return Object.hasOwn(members, name) ? members[name] : undefined;
}
