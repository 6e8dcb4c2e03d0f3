import type { Edit, EditsParam } from '../../runtime/index.ts';
import { placesWords } from './edits-text.ts';
import { type FieldProblem, type FieldProps, sentence } from './field.ts';

/** Entries shown at a time: a long list would make every key press slow. */
const PAGE = 50;

interface ListProps {
  readonly param: EditsParam;
  readonly edits: readonly Edit[];
  /** The chosen entry. */
  readonly at: number;
  readonly label: string;
  readonly problems: readonly FieldProblem[];
  readonly onChoose: (at: number) => void;
  readonly onPut: (edits: readonly Edit[], next: number) => void;
  readonly onPoint: NonNullable<FieldProps['onPoint']>;
}

/** The edits one below the other, in the order they are done. */
export function EditsList(props: ListProps) {
  const { edits, at, label, onChoose } = props;
  // The page follows the chosen entry: turning it chooses the first one on it.
  const first = Math.floor(at / PAGE) * PAGE;
  return (
    <>
      <ol className="form-edits" aria-label={label} start={first + 1}>
        {edits.slice(first, first + PAGE).map((edit, i) => <Entry key={first + i} {...props} edit={edit} index={first + i} />)}
      </ol>
      {edits.length > PAGE && (
        <div className="form-ways">
          <span className="form-says">{`${first + 1} to ${Math.min(first + PAGE, edits.length)} of ${edits.length}`}</span>
          <button type="button" className="button-quiet" aria-disabled={first === 0} onClick={() => onChoose(Math.max(0, first - PAGE))}>Earlier edits</button>
          <button type="button" className="button-quiet" aria-disabled={first + PAGE >= edits.length} onClick={() => onChoose(first + PAGE >= edits.length ? first : first + PAGE)}>Later edits</button>
        </div>
      )}
    </>
  );
}

/** An edit: pointing at it marks its places on the sheet, pressing it goes there. */
function Entry({ param, edits, edit, index, at, problems, onChoose, onPut, onPoint }: ListProps & { readonly edit: Edit; readonly index: number }) {
  const act = param.acts[edit.act];
  const choose = () => {
    onChoose(index);
    onPoint(index);
  };
  return (
    <li data-chosen={index === at} onPointerEnter={() => onPoint(index)} onPointerLeave={() => onPoint(undefined)} onFocus={choose} onBlur={() => onPoint(undefined)}>
      <span className="form-edit-number number">{index + 1}</span>
      <button type="button" className="form-edit" title={`${act ? `${act.doc} ` : ''}Press to see it on the sheet.`} onClick={() => onPoint(index, true)}>
        <strong>{act?.label ?? edit.act}</strong> <span className="form-edit-places number">{placesWords(edit.places)}</span>
      </button>
      <button type="button" className="button-quiet" aria-label={`Take back edit ${index + 1}`} onClick={() => onPut(edits.toSpliced(index, 1), Math.min(index, edits.length - 2))}>Take back</button>
      {problems.filter(({ at: entry }) => entry === index).map(({ kind, problem }, i) => (
        <p key={i} className={kind === 'problem' ? 'is-failed' : 'is-caution'}>
          <strong>{kind === 'problem' ? '✕ Stops here. ' : '! Caution. '}</strong>{sentence(problem)}
        </p>
      ))}
    </li>
  );
}
