import { useEffect, useRef, useState } from 'react';
import type { Edit, EditsParam } from '../../runtime/index.ts';
import { EditsAsText } from './EditsAsText.tsx';
import { EditsList } from './EditsList.tsx';
import type { FieldProps } from './field.ts';
import { FieldFrame } from './FieldFrame.tsx';

type EditsProps = FieldProps<EditsParam> & { readonly value: readonly Edit[] };

/** What was done by hand, in its order; each can be taken back by itself, and the list can be written. */
export function EditsField(props: EditsProps) {
  const { param, value, label, problems, onEdit } = props;
  const [asText, setAsText] = useState(false);
  const [chosen, setChosen] = useState(0);
  const point = usePointing(props.onPoint);
  const at = Math.min(chosen, value.length - 1);
  const put = (edits: readonly Edit[], next: number) => {
    setChosen(Math.max(0, next));
    onEdit(edits);
  };
  const own = problems.filter(({ at: entry }) => entry === undefined || entry >= value.length);
  return (
    <FieldFrame {...props} problems={own} single={false} rule={RULE} beside={() => <span className="form-says">{counted(value.length)}</span>}>
      {() => asText ? <EditsAsText param={param} value={value} label={label} onEdit={onEdit} onClose={() => setAsText(false)} /> : (
        <div className="form-points">
          {value.length > 0 && <EditsList param={param} edits={value} at={at} label={label} problems={problems} onChoose={setChosen} onPut={put} onPoint={point} />}
          <Tools edits={value} at={at} onPut={put} onText={() => setAsText(true)} />
        </div>
      )}
    </FieldFrame>
  );
}

const RULE = 'Done in this order. Places are told in percent of the longer side of what came in, across and up from its lower left corner, so that they stay where they were on it when its size changes.';

const counted = (edits: number): string => (edits === 1 ? '1 edit' : `${edits === 0 ? 'no' : edits} edits`);

/** Tells which entry is pointed at, and that none is once the list is gone. */
function usePointing(tell: FieldProps['onPoint']): NonNullable<FieldProps['onPoint']> {
  const told = useRef(tell);
  useEffect(() => {
    told.current = tell;
  });
  useEffect(() => () => told.current?.(undefined), []);
  return (index, goes) => told.current?.(index, goes);
}

interface ToolsProps {
  readonly edits: readonly Edit[];
  readonly at: number;
  /** Sets the list and chooses one of its entries. */
  readonly onPut: (edits: readonly Edit[], next: number) => void;
  readonly onText: () => void;
}

/** What is done to the chosen edit or the list. */
function Tools({ edits, at, onPut, onText }: ToolsProps) {
  const number = at + 1;
  const move = (to: number) => {
    const edit = edits[at];
    if (edit !== undefined && edits[to] !== undefined) onPut(edits.toSpliced(at, 1).toSpliced(to, 0, edit), to);
  };
  return (
    <div className="form-ways">
      {edits.length > 1 && <button type="button" className="button-quiet" aria-disabled={at === 0} onClick={() => move(at - 1)}>{`Do ${number} earlier`}</button>}
      {edits.length > 1 && <button type="button" className="button-quiet" aria-disabled={at === edits.length - 1} onClick={() => move(at + 1)}>{`Do ${number} later`}</button>}
      <button type="button" className="button-quiet" onClick={onText}>As text</button>
    </div>
  );
}
