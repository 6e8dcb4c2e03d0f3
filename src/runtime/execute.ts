import type { Context, NodeDeclaration, Outputs } from './node.ts';
import { checkValue, withDefaults } from './param-values.ts';
import type { AnyParamValues } from './params.ts';
import { type Problem, type Problems, nonEmpty } from './problem.ts';
import { show, showList } from './show.ts';

/** What computing a node gave. */
export type Executed =
  | { readonly ok: true; readonly outputs: Readonly<Record<string, unknown>>; readonly cautions: readonly Problem[] }
  | { readonly ok: false; readonly problems: Problems };

type Compute = (inputs: Readonly<Record<string, unknown>>, params: AnyParamValues, context: Context) => unknown;

/**
 * Computes a node from input values and parameters of which any may be left out, outside of a graph: for examples and
 * tests. Parameters are checked as those of a graph are; the inputs must be of their ports' types.
 */
export function runNode(
  declaration: NodeDeclaration, inputs: Readonly<Record<string, unknown>>, params: Readonly<Record<string, unknown>> = {},
  context: Context = { checkpoint: () => undefined },
): Executed {
  const faults = nonEmpty(Object.entries(params).flatMap(([name, value]): Problem[] => {
    const param = Object.hasOwn(declaration.params, name) ? declaration.params[name] : undefined;
    if (param === undefined) return [{ place: name, expected: 'a declared parameter', found: show(name), advice: 'Remove it.' }];
    const fault = checkValue(param, value);
    return fault === undefined ? [] : [{ place: name, ...fault }];
  }));
  return faults === undefined ? execute(declaration, inputs, withDefaults(declaration.params, params), context) : { ok: false, problems: faults };
}

/**
 * Calls a node's `compute` with complete inputs and parameters. Whatever `compute` throws, or returns against its
 * declaration, is its author's mistake and becomes a problem that says so.
 */
export function execute(
  declaration: NodeDeclaration, inputs: Readonly<Record<string, unknown>>, params: AnyParamValues, context: Context,
): Executed {
  try {
    return readOutcome((declaration.compute as Compute)(inputs, params, context), declaration.outputs);
  } catch (thrown) {
    return mistake('a result', thrown instanceof Error ? show(firstLine(`${thrown.name}: ${thrown.message}`)) : show(thrown));
  }
}

function readOutcome(outcome: unknown, declared: Outputs): Executed {
  const { ok, outputs, cautions = [], problems } = (outcome ?? {}) as Readonly<Record<string, unknown>>;
  if (ok === false) {
    const told = Array.isArray(problems) ? nonEmpty(problems as Problem[]) : undefined;
    return told === undefined ? mistake('a problem that says why there is no result', 'none') : { ok, problems: told };
  }
  if (ok !== true || typeof outputs !== 'object' || outputs === null) return mistake('an outcome with outputs or problems', show(outcome));
  const wrong = wrongPorts(outputs as Readonly<Record<string, unknown>>, declared);
  return wrong ?? { ok, outputs: outputs as Readonly<Record<string, unknown>>, cautions: cautions as readonly Problem[] };
}

function wrongPorts(outputs: Readonly<Record<string, unknown>>, declared: Outputs): Executed | undefined {
  const expected = Object.keys(declared);
  const found = Object.keys(outputs).filter((port) => outputs[port] !== undefined);
  const exact = found.length === expected.length && expected.every((port) => found.includes(port));
  return exact ? undefined : mistake(`the outputs ${showList(expected)}`, showList(found));
}

function mistake(expected: string, found: string): Executed {
  return { ok: false, problems: [{ expected, found, advice: 'This is a defect of the node itself: report it, and until it is mended try other values or another node.' }] };
}

function firstLine(text: string): string {
  return text.split('\n', 1)[0]!;
}
