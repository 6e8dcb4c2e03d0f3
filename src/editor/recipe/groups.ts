import type { ListedInput } from '../../runtime/index.ts';

export interface InputGroup {
  readonly heading: string;
  readonly inputs: readonly ListedInput[];
}

/** What stands under no heading of its own. */
const OTHERS = 'Values';

/** The inputs under their headings; headings in the order in which the first of each comes, inputs in theirs. */
export function groupsOf(inputs: readonly ListedInput[]): readonly InputGroup[] {
  const groups = new Map<string, ListedInput[]>();
  for (const input of inputs) {
    const heading = input.group ?? OTHERS;
    const group = groups.get(heading);
    if (group === undefined) groups.set(heading, [input]);
    else group.push(input);
  }
  return [...groups].map(([heading, members]) => ({ heading, inputs: members }));
}
