import type { Catalogue } from '../runtime/catalogue.ts';
import type { GraphDocument } from '../runtime/document.ts';
import { type BeyondProved, provedInputs } from '../runtime/inputs.ts';
import { unitSuffix } from '../runtime/param-values.ts';
import type { Check } from './check.ts';

/** A finding about the recipe itself, at the node whose parameter is meant. */
export interface RecipeCheck {
  readonly node: string;
  readonly check: Check;
}

/** Whether the exposed inputs lie where the recipe was proved: a caution for each that does not; none where the recipe says nothing about that. */
export function recipeChecks(document: GraphDocument, catalogue: Catalogue): readonly RecipeCheck[] {
  const { proved: [first, ...others], beyond } = provedInputs(document, catalogue);
  if (first === undefined) return [];
  if (beyond.length > 0) return beyond.map((one) => ({ node: one.input.target.node, check: beyondCheck(one) }));
  const count = others.length + 1;
  const says = count === 1 ? `${first.label} lies where this recipe was proved.` : `All ${count} values that it was proved for lie where this recipe was proved.`;
  return [{ node: first.target.node, check: { check: 'proved-range', status: 'pass', value: 0, limit: 0, unit: 'count', says } }];
}

function beyondCheck({ input: { label, param, proved: [least, greatest] }, value }: BeyondProved): Check {
  const unit = unitSuffix(param.unit);
  return {
    check: 'proved-range', status: 'caution', value, limit: value < least ? least : greatest, unit: param.unit,
    says: `${label} is ${value}${unit}; this recipe was proved from ${least} to ${greatest}${unit}. Look at every check, and try it on waste first.`,
  };
}
