import { useId } from 'react';
import type { ChoiceParam } from '../../runtime/index.ts';
import type { FieldProps } from './field.ts';
import { type FieldIds, FieldFrame } from './FieldFrame.tsx';

/** Most options, and most characters of all together, that lie side by side; more of them open as a list. */
const SIDE_BY_SIDE = { options: 3, characters: 30 } as const;

type Choice = FieldProps<ChoiceParam> & { readonly value: string };

/** One of several words. */
export function ChoiceField(props: Choice) {
  const { options } = props.param;
  const short = options.length <= SIDE_BY_SIDE.options && options.join('').length <= SIDE_BY_SIDE.characters;
  return short
    ? <FieldFrame {...props} single={false}>{(ids) => <Words {...props} ids={ids} />}</FieldFrame>
    : <FieldFrame {...props}>{(ids) => <List {...props} ids={ids} />}</FieldFrame>;
}

function Words({ param, value, onEdit, ids }: Choice & { readonly ids: FieldIds }) {
  const name = useId();
  return (
    <div role="radiogroup" aria-labelledby={ids.label} className="form-words">
      {param.options.map((option) => (
        <label key={option} className="form-word">
          <input type="radio" name={name} value={option} checked={option === value} onChange={() => onEdit(option)} />
          <span>{option}</span>
        </label>
      ))}
    </div>
  );
}

function List({ param, value, onEdit, ids }: Choice & { readonly ids: FieldIds }) {
  return (
    <select id={ids.control} className="field form-list" value={value} aria-describedby={ids.describedBy} onChange={(event) => onEdit(event.target.value)}>
      {!param.options.includes(value) && <option value={value} disabled>{`${value} (not offered)`}</option>}
      {param.options.map((option) => <option key={option}>{option}</option>)}
    </select>
  );
}
