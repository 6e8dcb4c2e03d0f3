import { createPortal } from 'react-dom';
import { currentGraph } from './follow.ts';
import { portSpot } from './bench-graph.ts';
import { Frames } from './Frames.tsx';
import { lie } from './lie.ts';
import { type Pull, useBench } from './state.ts';
import { drawWire, routeWire } from './wire-path.ts';
import { sameEnd } from '../model/graph.ts';

/** What moves with the cards and is none: frames of groups below them, the wire and the frame being drawn above them. */
export function Layers() {
  const under = useBench((state) => state.under);
  const over = useBench((state) => state.over);
  return (
    <>
      {under !== undefined && createPortal(<Frames />, under)}
      {over !== undefined && createPortal(<><PulledWire /><ChoosingFrame /></>, over)}
    </>
  );
}

function PulledWire() {
  const pull = useBench((state) => state.pull);
  return pull === undefined ? null : (
    <svg className="bench-wire bench-wire-pulled" width="1" height="1" aria-hidden="true" focusable="false">
      <path className={pull.refusal === undefined ? 'bench-wire-line' : 'bench-wire-line bench-wire-refused'} d={drawWire(turnsOf(pull))} />
    </svg>
  );
}

function turnsOf({ from, at, over, refusal }: Pull) {
  const held = spotOf(from);
  const free = (over !== undefined && refusal === undefined ? spotOf(over) : undefined) ?? at;
  const [start, end] = from.side === 'output' ? [held ?? at, free] : [free, held ?? at];
  return routeWire({ at: start, lane: 0 }, { at: end, lane: 0 }, []);
}

function spotOf(wanted: Pull['from']): readonly [number, number] | undefined {
  const { boxes } = lie.getState();
  for (const card of currentGraph().cards.values()) {
    const index = (wanted.side === 'input' ? card.inputs : card.outputs).findIndex(({ end }) => sameEnd(end, wanted));
    const box = boxes.get(card.id);
    if (index >= 0 && box !== undefined) return portSpot(box, wanted.side, index);
  }
  return undefined;
}

function ChoosingFrame() {
  const box = useBench((state) => state.choosing);
  if (box === undefined) return null;
  return <div className="bench-choosing" style={{ transform: `translate(${box.x}px, ${box.y}px)`, width: box.width, height: box.height }} />;
}
