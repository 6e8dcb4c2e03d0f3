import { type KeyboardEvent, type ReactNode, useState } from 'react';
import type { Problem, Unit } from '../../runtime/index.ts';
import { type Refusal, readExpression } from './expression.ts';
import { sentence } from './field.ts';
import { amount, exactText, shownText } from './units.ts';

/** What is in the field and differs from the value, as long as that is the value it was typed over. */
interface Draft {
  readonly text: string;
  readonly over: number;
  /** Why it was refused when the person left it. */
  readonly refusal?: Refusal;
}

export interface Entry {
  /** Attributes of the text field. */
  readonly field: {
    readonly value: string;
    readonly 'aria-invalid': boolean;
    readonly onChange: (event: { readonly target: { readonly value: string } }) => void;
    readonly onFocus: () => void;
    readonly onBlur: () => void;
    readonly onKeyDown: (event: KeyboardEvent) => void;
  };
  /** What the text comes to, while it is typed and says more than the value itself. */
  readonly result: string | undefined;
  readonly refusal: ReactNode;
  readonly drop: () => void;
}

interface EntryOptions {
  readonly value: number;
  readonly unit: Unit;
  /** Why a number is not taken. */
  readonly check: (value: number) => Problem | undefined;
  readonly onCommit: (value: number) => void;
}

/**
 * A text field for a number: it shows the value, takes expressions, hands the value over on Enter or when it is left, and
 * keeps what it refuses, with the reason, until it is corrected or put back with Escape.
 */
export function useNumberEntry({ value, unit, check, onCommit }: EntryOptions): Entry {
  const [focused, setFocused] = useState(false);
  const [kept, setDraft] = useState<Draft>();
  const draft = kept !== undefined && Object.is(kept.over, value) ? kept : undefined;
  // Dropped for good, lest it come back when the value does.
  if (draft !== kept) setDraft(undefined);
  const read = (text: string): { value: number } | { refusal: Refusal } => {
    const reading = readExpression(text, unit);
    const refusal = reading.ok ? check(reading.value) : reading.refusal;
    return refusal !== undefined ? { refusal } : { value: (reading as { value: number }).value };
  };
  const commit = (text: string) => {
    const outcome = read(text);
    if ('refusal' in outcome) return setDraft({ text, over: value, refusal: outcome.refusal });
    setDraft(undefined);
    if (!Object.is(outcome.value, value)) onCommit(outcome.value);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && draft !== undefined) commit(draft.text);
    if (event.key === 'Escape' && draft !== undefined) {
      event.stopPropagation();
      setDraft(undefined);
    }
  };
  return {
    field: {
      value: draft?.text ?? (focused ? exactText(value) : shownText(value)),
      'aria-invalid': draft?.refusal !== undefined,
      onChange: ({ target }) => setDraft({ text: target.value, over: value }),
      onFocus: () => setFocused(true),
      onBlur: () => {
        setFocused(false);
        if (draft !== undefined) commit(draft.text);
      },
      onKeyDown,
    },
    result: draft === undefined || draft.refusal !== undefined ? undefined : resultOf(draft.text, unit, check),
    refusal: draft?.refusal && <Refused refusal={draft.refusal} present={amount(value, unit)} onTake={commit} onDrop={() => setDraft(undefined)} />,
    drop: () => setDraft(undefined),
  };
}

/** What an expression comes to, and that it is beyond the limits; nothing for a bare number, nor for what is not yet one. */
function resultOf(text: string, unit: Unit, check: EntryOptions['check']): string | undefined {
  const reading = readExpression(text, unit);
  if (!reading.ok) return undefined;
  const fault = check(reading.value);
  if (fault !== undefined) return `= ${amount(reading.value, unit)}; takes ${fault.expected}`;
  return /^\s*[+-]?[\d.]+\s*$/.test(text) ? undefined : `= ${amount(reading.value, unit)}`;
}

interface RefusedProps {
  readonly refusal: Refusal;
  readonly present: string;
  readonly onTake: (text: string) => void;
  readonly onDrop: () => void;
}

/** Why the text was refused, and ways out of it for those without an Escape key. */
function Refused({ refusal, present, onTake, onDrop }: RefusedProps) {
  return (
    <>
      <p role="alert">{sentence(refusal)}</p>
      <span className="form-ways">
        {refusal.instead?.map((text) => <button key={text} type="button" className="button-quiet" onClick={() => onTake(text)}>{`Take ${text}`}</button>)}
        <button type="button" className="button-quiet" onClick={onDrop}>{`Keep ${present}`}</button>
      </span>
    </>
  );
}
