import { type Wire } from '../../runtime/index.ts';
import { type End, endOf, endText, sameEnd } from '../model/graph.ts';
import { opposite, portsThatFit } from '../model/fitting.ts';
import { disconnect, refusalOfRewire, refusalOfWire, wiresAt } from '../model/wiring.ts';
import { edit, editor, present } from '../state/editor.ts';
import { chooseWire, layWire, moveWire } from './actions.ts';
import { currentGraph } from './follow.ts';
import type { Gesture } from './gestures.ts';
import { lie } from './lie.ts';
import { type Pull, announce, bench } from './state.ts';
import type { BenchView } from './view.ts';

/** Side and `id.port` of an end, as ports on the page carry it. */
export const endKey = (end: End): string => `${end.side} ${endText(end)}`;

/** The end that an element of a port stands for. */
export function endOfKey(key: string | undefined): End | undefined {
  const [side, text] = key?.split(' ') ?? [];
  return side === 'input' || side === 'output' ? endOf(text ?? '', side) : undefined;
}

/** Pulls a wire out of a port. From an input that takes one wire and has one, that wire's end is taken off. */
export function beginPull(view: BenchView, end: End, start: PointerEvent): Gesture {
  const [wire] = end.side === 'input' && !takesSeveral(end) ? wiresAt(present(), end) : [];
  const card = (start.target as Element).closest<HTMLElement>('.bench-card')?.dataset['node'] ?? end.node;
  return pulling(view, wire === undefined ? newPull(end) : loosePull(wire, end), () => bench.setState({ wiring: { card, end } }));
}

/** Takes off the end of a wire that is nearer to the pointer. */
export function beginLoosen(view: BenchView, key: string, start: PointerEvent): Gesture | undefined {
  const wire = currentGraph().wires.get(key)?.wire;
  const turns = lie.getState().turns.get(key);
  const [from, to] = [endOf(wire?.from ?? '', 'output'), endOf(wire?.to ?? '', 'input')];
  if (wire === undefined || turns === undefined || from === undefined || to === undefined) return undefined;
  const [x, y] = view.spotAt(start.clientX, start.clientY);
  const [first, last] = [turns[0]!, turns.at(-1)!];
  const nearFirst = Math.hypot(first[0] - x, first[1] - y) < Math.hypot(last[0] - x, last[1] - y);
  return pulling(view, loosePull(wire, nearFirst ? from : to), () => chooseWire(key));
}

/** Whether a port is an input that takes several wires. */
export const takesSeveral = ({ node, port }: End): boolean =>
  [...currentGraph().cards.values()].some(({ inputs }) => inputs.some(({ end, many }) => many && end.node === node && end.port === port));

type Begun = Pick<Pull, 'from' | 'fitting' | 'loose'>;

function newPull(end: End): Begun {
  const { shapes } = editor.getState();
  return { from: end, fitting: new Set(portsThatFit(shapes, present(), end).map((port) => endKey(port.end))) };
}

/** The wire goes on from its other end; the port it was at takes it back. */
function loosePull(wire: Wire, end: End): Begun {
  const from = endOf(end.side === 'input' ? wire.from : wire.to, opposite(end.side))!;
  return { ...newPull(from), from, loose: wire, fitting: new Set([...newPull(from).fitting, endKey(end)]) };
}

function pulling(view: BenchView, begun: Begun, press: () => void): Gesture {
  const pullAt = (event: PointerEvent): Pull => {
    const over = portBelow(event, begun);
    const refusal = over === undefined ? undefined : refusalAt(begun, over);
    return {
      ...begun, at: view.spotAt(event.clientX, event.clientY), pointer: [event.clientX, event.clientY],
      ...(over !== undefined && { over }), ...(refusal !== undefined && { refusal }),
    };
  };
  return {
    move: (event) => bench.setState({ pull: pullAt(event) }),
    end: (event, moved) => {
      bench.setState({ pull: undefined });
      if (moved) letGo(begun, pullAt(event));
      else press();
    },
    cancel: () => bench.setState({ pull: undefined }),
  };
}

/** The port below the pointer; on a card's inside, the first of its ports that takes the wire. */
function portBelow({ clientX, clientY }: PointerEvent, { from, fitting }: Begun): End | undefined {
  const below = document.elementFromPoint(clientX, clientY);
  const exact = endOfKey(below?.closest<HTMLElement>('[data-end]')?.dataset['end']);
  if (exact !== undefined) return sameEnd(exact, from) ? undefined : exact;
  const card = currentGraph().cards.get(below?.closest<HTMLElement>('.bench-card')?.dataset['node'] ?? '');
  const ports = (from.side === 'output' ? card?.inputs : card?.outputs) ?? [];
  const fits = ports.filter(({ end }) => fitting.has(endKey(end)));
  return (fits.find(({ wired }) => wired.length === 0) ?? fits[0])?.end;
}

function refusalAt({ from, loose }: Begun, over: End): string | undefined {
  const { shapes } = editor.getState();
  return loose === undefined ? refusalOfWire(shapes, present(), from, over) : refusalOfRewire(shapes, present(), loose, over);
}

/** On a port that takes it the wire is laid; on the empty bench a new one asks for a step, a loosened one is gone. */
function letGo({ from, loose }: Begun, { over, refusal, at, pointer }: Pull): void {
  if (refusal !== undefined) announce(refusal);
  else if (over !== undefined) {
    if (loose === undefined) layWire(from, over);
    else moveWire(loose, over);
  } else if (!isOnBench(pointer)) return;
  else if (loose === undefined) bench.setState({ adding: { at: [at[0], at[1] - 54], port: from } });
  else {
    edit('take a wire away', disconnect(loose));
    announce('Wire taken away.');
  }
}

const isOnBench = ([x, y]: Pull['pointer']): boolean => document.elementFromPoint(x, y)?.closest('.bench-area') !== null;
