import { checkHandle } from './check-handle.ts';
import type { Inputs, NodeDeclaration, Outputs } from './node.ts';
import { isMemberName, isTypeName } from './names.ts';
import { checkValue, defaultOf } from './param-values.ts';
import type { Param } from './params.ts';
import { formatProblem } from './problem.ts';

/** Every node type there is, by name. */
export type Catalogue = ReadonlyMap<string, NodeDeclaration>;

/**
 * Collects declarations. Throws an Error naming the node when a declaration is at fault: a bad or duplicate name, limits
 * that exclude each other, a default outside its limits. These are mistakes of the node's author.
 */
export function makeCatalogue(declarations: readonly NodeDeclaration[]): Catalogue {
  const catalogue = new Map<string, NodeDeclaration>();
  for (const declaration of declarations) {
    checkDeclaration(declaration);
    if (catalogue.has(declaration.name)) throw new Error(`Two nodes are named "${declaration.name}".`);
    catalogue.set(declaration.name, declaration);
  }
  return catalogue;
}

function checkDeclaration({ name, inputs, outputs, params, handles = [] }: NodeDeclaration): void {
  if (!isTypeName(name)) throw new Error(`The node name "${name}" is not kebab-case.`);
  checkNames(name, inputs, outputs, params);
  for (const [key, param] of Object.entries(params)) checkParam(`${name}.${key}`, param);
  for (const handle of handles) checkHandle(name, handle, outputs, params);
}

/** Inputs and parameters share one name space, because problems name their place by name alone. */
function checkNames(node: string, inputs: Inputs, outputs: Outputs, params: object): void {
  for (const key of [...Object.keys(inputs), ...Object.keys(outputs), ...Object.keys(params)])
    if (!isMemberName(key)) throw new Error(`Node "${node}": the name "${key}" is not camelCase, or every object has it.`);
  const both = Object.keys(inputs).find((key) => Object.hasOwn(params, key));
  if (both !== undefined) throw new Error(`Node "${node}" has both an input and a parameter "${both}".`);
}

function checkParam(place: string, param: Param): void {
  if (param.kind === 'number' && !(param.min <= param.max && param.step > 0))
    throw new Error(`Parameter "${place}": min must not exceed max, and step must be positive.`);
  if (param.kind === 'choice' && new Set(param.options).size < param.options.length)
    throw new Error(`Parameter "${place}" offers an option twice.`);
  if (param.kind === 'file' && !param.accept.every((ending) => /^\..+/.test(ending)))
    throw new Error(`Parameter "${place}": file name endings begin with a dot.`);
  const fault = checkValue(param, defaultOf(param));
  if (fault !== undefined) throw new Error(`Parameter "${place}": bad default: ${formatProblem(fault)}`);
}
