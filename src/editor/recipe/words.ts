import type { ListedInput } from '../../runtime/index.ts';
import { amount, shownText } from '../form/units.ts';

/** Between which values the recipe was proved, and that the present one lies beyond; nothing where the recipe says nothing. */
export function provedWords({ param, proved, value }: ListedInput): readonly string[] {
  if (param.kind !== 'number' || proved === undefined) return [];
  const [least, greatest] = proved;
  const beyond = typeof value === 'number' && (value < least || value > greatest);
  const range = `Proved from ${shownText(least)} to ${amount(greatest, param.unit)}.`;
  return beyond ? [range, 'This value lies beyond: look at every check, and try it on waste first.'] : [range];
}
