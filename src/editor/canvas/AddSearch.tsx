import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import type { Found } from '../model/find.ts';
import { portLabel, titleAt } from '../model/graph.ts';
import { wireTitle } from '../model/inserting.ts';
import type { KeptPiece } from '../model/pieces.ts';
import { edit, editor, present, useEditor } from '../state/editor.ts';
import { surroundings } from '../state/step-surroundings.ts';
import { presentCards } from './actions.ts';
import { additionOf, offersFor, wantedBy } from './adding.ts';
import { focusCard } from './focus.ts';
import { Popup } from './Popup.tsx';
import { type Adding, announce, bench, useBench, viewport } from './state.ts';

/** The search that adds a step, where it was asked for. */
export function AddSearch() {
  const adding = useBench((state) => state.adding);
  return adding === undefined ? null : <Search key={adding.at.join(' ')} adding={adding} />;
}

const close = () => {
  bench.setState({ adding: undefined });
  const { focused } = bench.getState();
  if (focused !== undefined) focusCard(focused);
};

function Search({ adding }: { readonly adding: Adding }) {
  const [query, setQuery] = useState('');
  const [at, setAt] = useState(0);
  const list = useId();
  const shapes = useEditor((state) => state.shapes);
  const pieces = useKeptPieces();
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus({ preventScroll: true }), []);
  const offers = offersFor({ shapes, pieces }, present(), adding, query);
  const active = Math.min(at, offers.length - 1);
  const press = (event: KeyboardEvent) => {
    const step = { ArrowDown: 1, ArrowUp: -1, PageDown: 6, PageUp: -6 }[event.key];
    if (step !== undefined && offers.length > 0) setAt(Math.max(0, Math.min(offers.length - 1, active + step)));
    else if (event.key === 'Enter' && offers[active] !== undefined) take(adding, offers[active]);
    else return;
    event.preventDefault();
  };
  return (
    <Popup label={headingOf(adding)} at={screenSpot(adding.at)} onClose={close}>
      <div className="bench-search">
        <label htmlFor={`${list}-field`}>{headingOf(adding)}</label>
        <input
          ref={field} id={`${list}-field`} className="field" role="combobox" aria-expanded="true" aria-controls={list} aria-autocomplete="list" autoComplete="off" spellCheck={false}
          aria-activedescendant={offers.length > 0 ? `${list}-${active}` : undefined} value={query} placeholder="Type what it should do"
          onChange={({ currentTarget: { value } }) => {
            setQuery(value);
            setAt(0);
          }}
          onKeyDown={press}
        />
        <ul id={list} className="bench-offers" role="listbox" aria-label="Steps">
          {offers.map((found, i) => <Offer key={keyOf(found, i)} id={`${list}-${i}`} found={found} active={i === active} adding={adding} />)}
        </ul>
        {offers.length === 0 && <p className="bench-none">{adding.port ?? adding.into ? 'No step of this name fits there.' : 'No step is called that.'} Try another word.</p>}
        <p className="visually-hidden" role="status">{offers.length} {offers.length === 1 ? 'step' : 'steps'}</p>
      </div>
    </Popup>
  );
}

const keyOf = (found: Found, i: number): string => (found.kind === 'type' ? found.type : `${i} ${found.title}`);

interface OfferProps {
  readonly id: string;
  readonly found: Found;
  readonly active: boolean;
  readonly adding: Adding;
}

function Offer({ id, found, active, adding }: OfferProps) {
  const row = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (active) row.current?.scrollIntoView({ block: 'nearest' });
  }, [active]);
  const port = found.kind === 'type' ? found.port : undefined;
  return (
    <li ref={row} id={id} role="option" aria-selected={active} className="bench-offer" onClick={() => take(adding, found)}>
      <strong>{found.title}</strong>{port !== undefined && <span className="bench-offer-port"> {adding.port?.side === 'input' ? 'from' : 'to'} its {port.label}</span>}
      <span className="bench-offer-says">{found.says}</span>
    </li>
  );
}

function headingOf({ port, into }: Adding): string {
  const { shapes } = editor.getState();
  if (into !== undefined) return `Insert a step: ${wireTitle(shapes, present(), into)}`;
  if (port === undefined) return 'Add a step';
  const label = portLabel(port.port, wantedBy(shapes, present(), port)?.type as Parameters<typeof portLabel>[1]);
  const title = titleAt(shapes, present(), port.node);
  return port.side === 'output' ? `Add a step that takes ${label} of ${title}` : `Add a step that gives ${title} its ${label}`;
}

/** Where a place on the bench is in its window, in pixels. */
function screenSpot([px, py]: readonly [number, number]): readonly [number, number] {
  const { x, y, k } = viewport.getState();
  return [px * k + x, py * k + y];
}

function take(adding: Adding, found: Found): void {
  const addition = additionOf(editor.getState().shapes, present(), adding, found);
  bench.setState({ adding: undefined });
  if (!addition.ok) {
    announce(addition.refusal);
    return;
  }
  edit(addition.says, addition.edit);
  presentCards(addition.ids);
  announce(`${found.title} added.`);
}

function useKeptPieces(): readonly KeptPiece[] {
  const [pieces, setPieces] = useState<readonly KeptPiece[]>([]);
  useEffect(() => {
    let gone = false;
    void surroundings().pieces?.kept().then((kept) => {
      if (!gone) setPieces(kept);
    });
    return () => {
      gone = true;
    };
  }, []);
  return pieces;
}
