import { useMemo } from 'react';
import { useEditor } from '../state/editor.ts';
import { type Need, needsOf } from './needs.ts';

/** The machine, sheet, cutters and light that the recipe counts on, in their steps' own words. */
export function Needs() {
  const document = useEditor(({ history }) => history.document);
  const shapes = useEditor((state) => state.shapes);
  const needs = useMemo(() => needsOf(document, shapes), [document, shapes]);
  if (needs.length === 0) return null;
  return (
    <section className="recipe-needs" aria-labelledby="recipe-needs">
      <h3 id="recipe-needs">What it needs</h3>
      <dl>{needs.map((need) => <NeedLine key={need.node} need={need} />)}</dl>
    </section>
  );
}

function NeedLine({ need: { node, title } }: { readonly need: Need }) {
  const says = useEditor(({ reports }) => reports.get(node)?.says);
  return <div><dt>{title}</dt><dd>{says ?? '…'}</dd></div>;
}
