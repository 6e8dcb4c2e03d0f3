import type { Edit, EditsParam } from '../../runtime/index.ts';
import type { FieldProps } from './field.ts';
import { FieldFrame } from './FieldFrame.tsx';

type EditsProps = FieldProps<EditsParam> & { readonly value: readonly Edit[] };

/** What was done by hand, in its order; each can be taken back by itself. */
export function EditsField(props: EditsProps) {
  const { param, value, onEdit } = props;
  return (
    <FieldFrame {...props} single={false} beside={() => <span className="form-says">{value.length === 1 ? '1 edit' : `${value.length === 0 ? 'no' : value.length} edits`}</span>}>
      {() => (
        <ol className="form-edits">
          {value.map(({ act }, index) => (
            <li key={index}>
              <span>{param.acts[act]?.label ?? act}</span>
              <button type="button" className="button-quiet" aria-label={`Take back edit ${index + 1}`} onClick={() => onEdit(value.toSpliced(index, 1))}>Take back</button>
            </li>
          ))}
        </ol>
      )}
    </FieldFrame>
  );
}
