import { type ComponentProps, useMemo } from 'react';
import { type ParamValue, checkValue } from '../../runtime/index.ts';
import { ChoiceField } from './ChoiceField.tsx';
import type { FieldProps } from './field.ts';
import { FieldFrame } from './FieldFrame.tsx';
import { EditsField } from './EditsField.tsx';
import { FileField } from './FileField.tsx';
import { NumberField } from './NumberField.tsx';
import { PointsField } from './PointsField.tsx';
import { SwitchField } from './SwitchField.tsx';
import { TextField } from './TextField.tsx';
import { shortText } from './short-text.ts';

/** The field for a parameter of any kind. What is wrong with the value itself is told, whether or not the node was evaluated. */
export function ParamField(props: FieldProps) {
  const { param, value } = props;
  // Remembered, since a file or a list of points may be large and the form is drawn anew for every move of a slider.
  const fault = useMemo(() => checkValue(param, value), [param, value]);
  const told = props.problems.some(({ kind }) => kind === 'problem');
  const problems = fault === undefined || told ? props.problems : [{ kind: 'problem', problem: fault } as const, ...props.problems];
  const fitting = fault?.code === 'wrong-kind' || fault?.code === 'not-finite' ? undefined : (value as ParamValue);
  return fitting === undefined ? <MisfitField {...props} problems={problems} /> : <KindField {...props} problems={problems} value={fitting} />;
}

/** The value is of the parameter's kind here, which `checkValue` has seen to. */
function KindField(props: FieldProps & { readonly value: ParamValue }) {
  switch (props.param.kind) {
    case 'number': return <NumberField {...props as ComponentProps<typeof NumberField>} />;
    case 'choice': return <ChoiceField {...props as ComponentProps<typeof ChoiceField>} />;
    case 'text': return <TextField {...props as ComponentProps<typeof TextField>} />;
    case 'file': return <FileField {...props as ComponentProps<typeof FileField>} />;
    case 'switch': return <SwitchField {...props as ComponentProps<typeof SwitchField>} />;
    case 'edits': return <EditsField {...props as ComponentProps<typeof EditsField>} />;
    case 'points': return <PointsField {...props as ComponentProps<typeof PointsField>} />;
  }
}

/** A value of another kind than the parameter's, as a damaged document may hold: shown, never changed by itself. */
function MisfitField(props: FieldProps) {
  return <FieldFrame {...props} single={false}>{() => <p className="form-misfit">{shortText(props.value)}</p>}</FieldFrame>;
}
