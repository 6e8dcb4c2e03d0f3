import type { SwitchParam } from '../../runtime/index.ts';
import type { FieldProps } from './field.ts';
import { FieldFrame } from './FieldFrame.tsx';

/** On or off, said in words. */
export function SwitchField(props: FieldProps<SwitchParam> & { readonly value: boolean }) {
  const { value, onEdit } = props;
  return (
    <FieldFrame
      {...props}
      beside={({ control, describedBy }) => (
        <span className="form-switch">
          <input id={control} type="checkbox" role="switch" checked={value} aria-describedby={describedBy} onChange={(event) => onEdit(event.target.checked)} />
          <label htmlFor={control} aria-hidden="true">{value ? 'on' : 'off'}</label>
        </span>
      )}
    />
  );
}
