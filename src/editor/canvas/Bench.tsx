import { useEffect, useRef } from 'react';
import { createPortal } from 'react-dom';
import './bench.css';
import { Card } from './Card.tsx';
import { follow } from './follow.ts';
import { watchGestures } from './gestures.ts';
import { useBench } from './state.ts';
import { BenchView } from './view.ts';
import { zoomToFit } from './zoom.ts';
import { holdView } from './current.ts';
import { WireLine } from './WireLine.tsx';

/** The bench line: cards that pass a piece of work from one to the next. */
export function Bench() {
  const holder = useRef<HTMLDivElement>(null);
  useEffect(() => (holder.current === null ? undefined : setUp(holder.current)), []);
  return (
    <section className="bench" aria-label="Bench">
      <div ref={holder} className="bench-area" />
      <Standing />
      <p className="visually-hidden" role="status"><Says /></p>
    </section>
  );
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
  const ends = [holdView(view), follow(view), watchGestures(holder, view), watchSize(holder, view)];
  zoomToFit();
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
