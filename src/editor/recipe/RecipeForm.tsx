import { useMemo } from 'react';
import { type ListedInput, type Param, type ParamValue, type Reference, listInputs } from '../../runtime/index.ts';
import { ParamField } from '../form/ParamField.tsx';
import type { FieldProblem } from '../form/field.ts';
import { resetParam, setParam } from '../model/steps.ts';
import { edit, setGesturing, useEditor } from '../state/editor.ts';
import { problemsAt } from '../form/problems.ts';
import { pointAt } from '../form/point-at.ts';
import { groupsOf } from './groups.ts';
import { Needs } from './Needs.tsx';
import { Take } from './Take.tsx';
import { provedWords } from './words.ts';
import './recipe.css';

/** A recipe as those use it who never open its graph: what it asks for, what it needs, the files to take. */
export function RecipeForm() {
  const title = useEditor(({ history }) => history.document.title);
  const notes = useEditor(({ history }) => history.document.notes);
  return (
    <section className="recipe" aria-labelledby="recipe-title">
      <h2 id="recipe-title">{title}</h2>
      {notes !== '' && <p className="recipe-notes">{notes}</p>}
      <Inputs />
      <Needs />
      <Take />
    </section>
  );
}

function Inputs() {
  const document = useEditor(({ history }) => history.document);
  const shapes = useEditor((state) => state.shapes);
  const groups = useMemo(() => groupsOf(listInputs(document, shapes)), [document, shapes]);
  if (shapes.size === 0) return null;
  if (groups.length === 0) return <p className="recipe-none">This recipe asks for nothing yet. On the bench, open a step and press “Ask for it in the form” at a value.</p>;
  return (
    <form className="form recipe-form" aria-label="What the recipe asks for" noValidate onSubmit={(event) => { event.preventDefault(); }}>
      {groups.map(({ heading, inputs }) => (
        <fieldset key={heading} className="recipe-group">
          <legend>{heading}</legend>
          {inputs.map((input) => <InputField key={input.name} input={input} />)}
        </fieldset>
      ))}
    </form>
  );
}

function InputField({ input }: { readonly input: ListedInput }) {
  const { target: { node, name }, param, value, label, help } = input;
  const problems = useProblems(input.target);
  const saved = useSaved(input.target);
  return (
    <ParamField
      param={saved === undefined || param.kind === 'file' ? param : { ...param, default: saved } as Param} value={value} label={label} doc={help} problems={problems} notes={provedWords(input)}
      onEdit={(next, gesture) => edit(`set ${label}`, setParam(node, name, next), gesture && `${node}.${name} ${gesture}`)}
      onReset={() => edit(`put ${label} back`, saved === undefined ? resetParam(node, name) : setParam(node, name, saved))}
      onPoint={(index, goes = false) => pointAt(node, name, index, goes)}
      onGesture={setGesturing}
    />
  );
}

/** The value that the recipe was opened with, which is what a user of it counts as its own. */
function useSaved({ node, name }: Reference): ParamValue | undefined {
  return useEditor(({ file: { saved } }) => saved?.nodes.find(({ id }) => id === node)?.params[name]);
}

function useProblems({ node, name }: Reference): readonly FieldProblem[] {
  const report = useEditor(({ reports }) => reports.get(node));
  return useMemo(() => problemsAt(report, name), [report, name]);
}
