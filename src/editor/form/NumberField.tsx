import { type NumberParam, checkValue } from '../../runtime/index.ts';
import type { FieldProps } from './field.ts';
import { FieldFrame } from './FieldFrame.tsx';
import { useNumberEntry } from './NumberEntry.tsx';
import { Slider } from './Slider.tsx';
import { amount, shownText, shownUnit } from './units.ts';

/** A number: a slider for trying, a text field for exact values, expressions and other units. */
export function NumberField(props: FieldProps<NumberParam> & { readonly value: number }) {
  const { param, value, label, onEdit, onGesture } = props;
  const entry = useNumberEntry({ value, unit: param.unit, check: (next) => checkValue(param, next), onCommit: (next) => onEdit(next) });
  const unit = shownUnit(param.unit);
  const rule = `${param.unit === 'count' ? 'A whole number, ' : 'From '}${shownText(param.min)} to ${amount(param.max, param.unit)}.`;
  return (
    <FieldFrame
      {...props} rule={rule} refusal={entry.refusal}
      beside={({ control, describedBy }) => (
        <span className="form-number">
          <input id={control} type="text" inputMode="text" className="field number form-entry" autoComplete="off" spellCheck={false} aria-describedby={describedBy} {...entry.field} />
          {unit !== '' && <span className="form-unit">{unit}</span>}
        </span>
      )}
    >
      {(ids) => (
        <>
          <output className="form-result" htmlFor={ids.control}>{entry.result}</output>
          <Slider
            param={param} value={value} label={label} describedBy={ids.describedBy} onGesture={onGesture}
            onSlide={(next, gesture) => {
              entry.drop();
              onEdit(next, `${label} ${gesture}`);
            }}
          />
        </>
      )}
    </FieldFrame>
  );
}
