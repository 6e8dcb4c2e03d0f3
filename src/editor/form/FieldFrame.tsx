import { type ReactNode, useId, useState } from 'react';
import { type Param, type ParamValue, deepEqual, defaultOf } from '../../runtime/index.ts';
import { type FieldProps, sentence } from './field.ts';
import { amount } from './units.ts';

/** Ids a control hangs on: its own, that of its visible label, and the texts that describe it. */
export interface FieldIds {
  readonly control: string;
  readonly label: string;
  readonly describedBy: string;
  readonly error: string;
}

interface FrameProps extends Omit<FieldProps, 'onEdit' | 'onGesture' | 'onPoint'> {
  /** Limits or another rule of the value, told with the doc sentence. */
  readonly rule?: string;
  /** Why the field refuses what it holds. */
  readonly refusal?: ReactNode;
  /** Whether the label belongs to one control; otherwise the field is a group of them. */
  readonly single?: boolean;
  /** Stands at the end of the label's line. */
  readonly beside?: (ids: FieldIds) => ReactNode;
  readonly children?: (ids: FieldIds) => ReactNode;
}

/** What all fields share: label, doc sentence, what is wrong, the way back to the default. */
export function FieldFrame(props: FrameProps) {
  const { param, value, label, doc, rule, notes = [], exposed = [], problems, refusal, single = true, beside, children } = props;
  const id = useId();
  const [opened, setOpened] = useState(false);
  const ids: FieldIds = { control: `${id}c`, label: `${id}l`, error: `${id}e`, describedBy: `${id}e ${id}p ${id}d` };
  const group = single ? {} : { role: 'group', 'aria-labelledby': ids.label, 'aria-describedby': ids.describedBy };
  return (
    <div className="form-field" data-kind={param.kind} {...group}>
      <div className="form-head">
        {single ? <label id={ids.label} htmlFor={ids.control} className="form-label">{label}</label> : <span id={ids.label} className="form-label">{label}</span>}
        <button type="button" className="form-about" aria-expanded={opened} aria-controls={`${id}d`} aria-label={`About ${label}`} onClick={() => setOpened(!opened)}>?</button>
        {beside && <div className="form-beside">{beside(ids)}</div>}
      </div>
      {children?.(ids)}
      <div id={ids.error} className="form-refusal field-refused">{refusal}</div>
      <Problems id={`${id}p`} problems={problems} />
      <div id={`${id}d`} className="form-doc field-says" data-opened={opened}>
        <p>{[doc, rule, ...notes].filter((text) => text !== undefined && text !== '').join(' ')}</p>
      </div>
      <Exposed label={label} labels={exposed} onAsk={props.onAsk} />
      <Reset param={param} value={value} label={label} onReset={props.onReset} />
    </div>
  );
}

function Problems({ id, problems }: { readonly id: string } & Pick<FieldProps, 'problems'>) {
  return (
    <div id={id} className="form-problems">
      {problems.map(({ kind, problem }) => (
        <p key={`${kind} ${sentence(problem)}`} className={kind === 'problem' ? 'is-failed' : 'is-caution'}>
          <strong>{kind === 'problem' ? '✕ Stops here. ' : '! Caution. '}</strong>{sentence(problem)}
        </p>
      ))}
    </div>
  );
}

function Exposed({ label, labels, onAsk }: { readonly label: string; readonly labels: readonly string[]; readonly onAsk: FieldProps['onAsk'] }) {
  const asked = labels.length > 0;
  if (onAsk === undefined && !asked) return null;
  return (
    <p className="form-exposed field-says">
      {asked && `The form asks for it: ${labels.join(', ')}. `}
      {onAsk !== undefined && (
        <button type="button" className="button-quiet" aria-label={asked ? `Take it out of the form: ${label}` : `Ask for it in the form: ${label}`} onClick={() => onAsk(!asked)}>
          {asked ? 'Take it out of the form' : 'Ask for it in the form'}
        </button>
      )}
    </p>
  );
}

function Reset({ param, value, label, onReset }: Pick<FieldProps, 'param' | 'value' | 'label' | 'onReset'>) {
  if (param.kind === 'file' || deepEqual(value, defaultOf(param))) return null;
  const words = valueText(param, defaultOf(param));
  const undoes = param.kind === 'edits' && param.default.length === 0;
  return (
    <button type="button" className="button-quiet form-reset" aria-label={undoes ? `Take all of ${label} back` : `Put ${label} back to ${words}`} onClick={onReset}>
      {undoes ? 'Take all back' : `Put back to ${words}`}
    </button>
  );
}

/** A value in few words. */
function valueText(param: Param, value: ParamValue): string {
  if (param.kind === 'number' && typeof value === 'number') return amount(value, param.unit);
  if (Array.isArray(value)) return `${value.length === 0 ? 'no' : value.length} ${param.kind}`;
  if (typeof value === 'boolean') return value ? 'on' : 'off';
  return value === '' ? 'empty' : `“${String(value)}”`;
}
