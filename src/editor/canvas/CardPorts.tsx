import { memo } from 'react';
import { useEditor } from '../state/editor.ts';
import type { BenchPort } from './bench-graph.ts';
import { portHeight } from './card-layout.ts';
import { familyOf } from './families.ts';
import { endKey } from './gesture-wire.ts';
import { useBench } from './state.ts';

interface PortsProps {
  readonly side: 'input' | 'output';
  readonly ports: readonly BenchPort[];
}

/** The words on a card's edge. Each can be pulled to draw a wire, and pressed to pick the other end from a list. */
export const CardPorts = memo(function CardPorts({ side, ports }: PortsProps) {
  if (ports.length === 0) return null;
  return (
    <ul className={`bench-ports bench-ports-${side}`} aria-label={side === 'input' ? 'Inputs' : 'Outputs'}>
      {ports.map((port, index) => <Port key={endKey(port.end)} port={port} index={index} />)}
    </ul>
  );
});

function Port({ port, index }: { readonly port: BenchPort; readonly index: number }) {
  const { end, label, type, many, optional, doc, wired } = port;
  const key = endKey(end);
  const light = useBench(({ pull }) => (pull === undefined ? '' : pull.from.side === end.side && pull.loose === undefined ? 'away' : pull.fitting.has(key) ? 'fits' : 'away'));
  const missing = useEditor(({ reports }) => end.side === 'input' && isMissing(port, reports.get(end.node)?.missing.map((input) => input.port)));
  const classes = ['bench-port', `bench-port-${familyOf(type)}`, many && 'bench-port-many', optional && 'bench-port-optional', missing && 'bench-port-missing', light !== '' && `bench-port-${light}`];
  return (
    <li style={{ top: portHeight(index) }}>
      <button type="button" tabIndex={-1} className={classes.filter(Boolean).join(' ')} data-end={key} title={[doc, many ? 'Takes several wires.' : '', optional ? 'May be left without a wire.' : ''].filter(Boolean).join(' ')} aria-label={spoken(port, missing)}>
        <span className="bench-port-word">{label}</span>
        {type !== undefined && type !== label && <>{' '}<span className="bench-port-type">{type}</span></>}
        {missing && <>{' '}<span className="bench-port-word bench-port-none">{wired.length > 0 ? 'nothing comes' : 'needs a wire'}</span></>}
      </button>
    </li>
  );
}

function isMissing(port: BenchPort, missing: readonly string[] | undefined): boolean {
  return missing?.includes(port.end.port) === true || (port.type !== undefined && !port.optional && port.wired.length === 0);
}

function spoken({ label, type, wired, end, optional }: BenchPort, missing: boolean): string {
  const kind = type === undefined ? 'unknown port' : type === label ? '' : type;
  const wires = wired.length > 0 ? `wired to ${wired.join('; ')}` : optional || end.side === 'output' ? 'not wired' : 'needs a wire';
  return [label, kind, wires, missing && wired.length > 0 ? 'nothing comes from there' : ''].filter(Boolean).join(', ');
}
