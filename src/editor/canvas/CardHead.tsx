import { useEffect, useRef } from 'react';
import { rename, toggleOpened } from './actions.ts';
import type { BenchCard } from './bench-graph.ts';
import { focusCard } from './focus.ts';
import { bench, useBench } from './state.ts';

interface HeadProps {
  readonly card: BenchCard;
  readonly opened: boolean;
  readonly tabbable: boolean;
}

/** A card's title and the button that opens it. */
export function CardHead({ card, opened, tabbable }: HeadProps) {
  const renaming = useBench((bench) => bench.renaming === card.id);
  return (
    <header className="bench-head">
      {renaming ? <TitleField card={card} /> : <h3 className="bench-title">{card.title}</h3>}
      {card.kind === 'group' && <span className="bench-count">{card.members.length} {card.members.length === 1 ? 'step' : 'steps'}</span>}
      <button type="button" className="bench-quiet bench-toggle" tabIndex={tabbable ? 0 : -1} aria-expanded={card.kind === 'group' ? undefined : opened} onClick={() => toggleOpened(card.id)}>
        {card.kind === 'group' ? 'Unfold' : opened ? 'Fold' : 'Open'}<span className="visually-hidden"> {card.title}</span>
      </button>
    </header>
  );
}

/** The title being typed: Enter keeps it, Escape does not. */
function TitleField({ card }: { readonly card: BenchCard }) {
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.select(), []);
  const done = (title: string) => {
    bench.setState({ renaming: undefined });
    rename(card, title);
  };
  const press = (event: React.KeyboardEvent<HTMLInputElement>) => {
    if (event.key !== 'Enter' && event.key !== 'Escape') return;
    event.stopPropagation();
    done(event.key === 'Enter' ? event.currentTarget.value : card.title);
    focusCard(card.id);
  };
  return (
    <input
      ref={field} className="field bench-title-field" aria-label={`Title of ${card.title}`} defaultValue={card.title} maxLength={80} autoComplete="off"
      onKeyDown={press} onBlur={({ currentTarget: { value } }) => bench.getState().renaming === card.id && done(value)}
    />
  );
}
