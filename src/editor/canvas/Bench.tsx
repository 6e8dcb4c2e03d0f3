import { type MouseEvent, useEffect, useRef } from 'react';
import { createPortal } from 'react-dom';
import './bench.css';
import './bench-card.css';
import { provide } from '../state/step-surroundings.ts';
import { AddSearch } from './AddSearch.tsx';
import { BenchBar } from './BenchBar.tsx';
import { BenchMenu } from './BenchMenu.tsx';
import { Card } from './Card.tsx';
import { placeInView } from './commands.ts';
import { holdView } from './current.ts';
import { EmptyBench, Refusal, WireTools } from './Floating.tsx';
import { follow } from './follow.ts';
import { watchGestures } from './gestures.ts';
import { pressOnCard } from './keys.ts';
import { Layers } from './Layers.tsx';
import { cardSizes } from './lie.ts';
import { askAt, doubleAt } from './press.ts';
import { watchSeen } from './seen.ts';
import { bench, useBench } from './state.ts';
import { BenchView } from './view.ts';
import { WireLine, chosenWire } from './WireLine.tsx';
import { WiringList } from './WiringList.tsx';
import { Overview } from './Overview.tsx';
import { watchFirstFit } from './zoom.ts';

/** The bench line: cards that pass a piece of work from one to the next. */
export function Bench() {
  const holder = useRef<HTMLDivElement>(null);
  const far = useBench((state) => state.far);
  const pulling = useBench(({ pull }) => pull !== undefined);
  useEffect(() => (holder.current === null ? undefined : setUp(holder.current)), []);
  const ask = (event: MouseEvent) => askAt(event, holder.current!);
  return (
    <section className={`bench${far ? ' bench-far' : ''}${pulling ? ' bench-pulling' : ''}`} aria-label="Bench" onKeyDown={pressOnCard} onDoubleClick={doubleAt} onContextMenu={ask} onFocus={({ target }) => noteFocus(target)}>
      <BenchBar />
      <div ref={holder} className="bench-area" />
      <Standing />
      <Layers />
      <EmptyBench />
      <WireTools />
      <Overview />
      <AddSearch />
      <WiringList />
      <BenchMenu />
      <Refusal />
      <p className="visually-hidden" role="status"><Says /></p>
    </section>
  );
}

function noteFocus(target: HTMLElement): void {
  const id = target.closest<HTMLElement>('.bench-card')?.dataset['node'];
  if (id !== undefined && bench.getState().focused !== id) bench.setState({ focused: id });
}

function Says() {
  return useBench(({ says }) => says);
}

/** Fills the elements that rete keeps for cards and wires. */
function Standing() {
  const cards = useBench((state) => state.cards);
  const wires = useBench((state) => state.wires);
  return (
    <>
      {[...cards].map(([id, element]) => createPortal(<Card id={id} />, element, id))}
      {[...wires].map(([id, element]) => createPortal(<WireLine id={id} />, element, id))}
    </>
  );
}

function setUp(holder: HTMLElement): () => void {
  const view = new BenchView(holder);
  const surroundings = { sizes: cardSizes, place: placeInView, wire: chosenWire, rename: (card: string) => bench.setState({ renaming: card }) };
  const ends = [holdView(view), follow(view), watchGestures(holder, view), watchSize(holder, view), watchSeen(), watchFirstFit(), provide(surroundings)];
  return () => {
    for (const end of ends) end();
    view.destroy();
  };
}

function watchSize(holder: HTMLElement, view: BenchView): () => void {
  if (typeof ResizeObserver === 'undefined') return () => undefined;
  const observer = new ResizeObserver(() => view.measure());
  observer.observe(holder);
  return () => observer.disconnect();
}
