import type { InputValues, Inputs, NodeDeclaration, Outcome, OutputValues, Outputs, ParamValues, Params, Problem } from '../../src/runtime/index.ts';

/** Computes a node on its own, parameters left out at their defaults. */
export function outcomeOf<I extends Inputs, O extends Outputs, P extends Params>(
  node: NodeDeclaration<I, O, P>, inputs: InputValues<I>, params: Partial<ParamValues<P>> = {},
): Outcome<O> {
  const defaults = Object.fromEntries(Object.entries(node.params).map(([name, param]) => [name, param.kind === 'file' ? null : param.default]));
  return node.compute(inputs, { ...defaults, ...params } as ParamValues<P>, { checkpoint: () => undefined });
}

/** The outputs of a node that must succeed. */
export function outputsOf<I extends Inputs, O extends Outputs, P extends Params>(
  node: NodeDeclaration<I, O, P>, inputs: InputValues<I>, params: Partial<ParamValues<P>> = {},
): OutputValues<O> {
  const outcome = outcomeOf(node, inputs, params);
  if (!outcome.ok) throw new Error(outcome.problems.map(({ found, advice }) => `${found}: ${advice}`).join('; '));
  return outcome.outputs;
}

/** The problems of a node that must fail. */
export function problemsOf<I extends Inputs, O extends Outputs, P extends Params>(
  node: NodeDeclaration<I, O, P>, inputs: InputValues<I>, params: Partial<ParamValues<P>> = {},
): readonly Problem[] {
  const outcome = outcomeOf(node, inputs, params);
  if (outcome.ok) throw new Error('expected problems, found outputs');
  return outcome.problems;
}
