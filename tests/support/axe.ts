import axe from 'axe-core';

/** Rules an element breaks, with where; contrast is measured elsewhere, since here nothing is painted. */
export async function violations(element: Element): Promise<readonly string[]> {
  const { violations: found } = await axe.run(element, { rules: { 'color-contrast': { enabled: false }, region: { enabled: false } } });
  return found.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
}
