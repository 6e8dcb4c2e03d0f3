import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { portsThatFit } from '../model/fitting.ts';
import { type End, sameEnd, wireKey } from '../model/graph.ts';
import { wiresAt } from '../model/wiring.ts';
import { editor, present } from '../state/editor.ts';
import { layWire, removeWire } from './actions.ts';
import type { BenchCard, BenchPort } from './bench-graph.ts';
import { focusCard } from './focus.ts';
import { currentGraph } from './follow.ts';
import { endKey, takesSeveral } from './gesture-wire.ts';
import { lie } from './lie.ts';
import { Popup } from './Popup.tsx';
import { bench, useBench, viewport } from './state.ts';
import { carries } from './WireLine.tsx';

/** Wiring without pulling: a list of the card's ports, then one of the ports that fit the one picked. */
export function WiringList() {
  const wiring = useBench((state) => state.wiring);
  const card = wiring === undefined ? undefined : currentGraph().cards.get(wiring.card);
  if (wiring === undefined || card === undefined) return null;
  return <Lists key={card.id + (wiring.end === undefined ? '' : endKey(wiring.end))} card={card} begun={wiring.end} />;
}

function close(card: string): void {
  bench.setState({ wiring: undefined });
  focusCard(card);
}

function Lists({ card, begun }: { readonly card: BenchCard; readonly begun: End | undefined }) {
  const [end, setEnd] = useState(begun);
  const port = [...card.inputs, ...card.outputs].find((one) => end !== undefined && sameEnd(one.end, end));
  const leave = () => close(card.id);
  return (
    <Popup label={port === undefined ? `Wire ${card.title}` : `Wire ${card.title}, ${port.label}`} at={besideCard(card.id)} onClose={leave}>
      {port === undefined ? <OwnPorts card={card} pick={setEnd} /> : <Partners key={endKey(port.end)} card={card} port={port} leave={leave} />}
    </Popup>
  );
}

function besideCard(id: string): readonly [number, number] {
  const box = lie.getState().boxes.get(id);
  const { x, y, k } = viewport.getState();
  return box === undefined ? [0, 0] : [(box.x + box.width) * k + x + 8, box.y * k + y];
}

/** A column of buttons gone through with the arrow keys. */
function Choices({ children }: { readonly children: React.ReactNode }) {
  const list = useRef<HTMLUListElement>(null);
  useEffect(() => list.current?.querySelector('button')?.focus({ preventScroll: true }), []);
  const press = (event: KeyboardEvent) => {
    const buttons = [...list.current?.querySelectorAll('button') ?? []];
    const at = buttons.indexOf(document.activeElement as HTMLButtonElement);
    const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: buttons.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    buttons[(to + buttons.length) % buttons.length]?.focus();
  };
  return <ul ref={list} className="bench-choices" onKeyDown={press}>{children}</ul>;
}

function OwnPorts({ card, pick }: { readonly card: BenchCard; readonly pick: (end: End) => void }) {
  const row = ({ end, label, type, wired }: BenchPort) => (
    <li key={endKey(end)}>
      <button type="button" className="bench-choice" disabled={type === undefined} onClick={() => pick(end)}>
        <strong>{label}</strong> <span>{end.side}{type !== undefined && type !== label ? `, ${type}` : ''}</span>
        <span className="bench-choice-says">{wired.length === 0 ? 'not wired' : `wired to ${wired.join('; ')}`}</span>
      </button>
    </li>
  );
  return (
    <>
      <p className="bench-heading">Wire {card.title}: which port?</p>
      <Choices>{[...card.inputs, ...card.outputs].map(row)}</Choices>
    </>
  );
}

function Partners({ card, port, leave }: { readonly card: BenchCard; readonly port: BenchPort; readonly leave: () => void }) {
  const fitting = portsThatFit(editor.getState().shapes, present(), port.end);
  const wires = wiresAt(present(), port.end);
  const add = () => bench.setState({ wiring: undefined, adding: { at: besideEnd(card.id, port.end), port: port.end } });
  return (
    <>
      <p className="bench-heading">{card.title}, {port.label}: {port.end.side === 'output' ? 'lead it where?' : 'from where?'}</p>
      <Choices>
        {fitting.map((other) => (
          <li key={endKey(other.end)}>
            <button type="button" className="bench-choice" onClick={() => { layWire(port.end, other.end); leave(); }}>
              <strong>{other.title}</strong> <span>{other.label}</span>
              {!other.free && <span className="bench-choice-says">{other.end.side === 'output' || takesSeveral(other.end) ? 'with the wires it has' : 'in place of the wire it has'}</span>}
            </button>
          </li>
        ))}
        {wires.map((wire) => (
          <li key={wireKey(wire)}>
            <button type="button" className="bench-choice" onClick={() => { removeWire(wire); leave(); }}>
              <strong>Take away</strong> <span className="bench-choice-says">{carries(wireKey(wire))}</span>
            </button>
          </li>
        ))}
        <li><button type="button" className="bench-choice" onClick={add}><strong>A new step…</strong></button></li>
      </Choices>
      {fitting.length === 0 && <p className="bench-none">No step on the bench has a port for {port.type ?? port.label} that is not wired to it already.</p>}
    </>
  );
}

function besideEnd(card: string, { side }: End): readonly [number, number] {
  const box = lie.getState().boxes.get(card);
  if (box === undefined) return [0, 0];
  return [side === 'output' ? box.x + box.width + 150 : box.x - 150, box.y];
}
