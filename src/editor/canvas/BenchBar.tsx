import { useStore } from 'zustand';
import type { Command } from '../state/commands.ts';
import { benchCommands } from './commands.ts';
import { bench, useBench, viewport } from './state.ts';

const commandOf = (id: string): Command => benchCommands.find((command) => command.id === id)!;

/** What is done to the bench most, within reach of a finger. */
export function BenchBar() {
  const { overview, notes } = useBench((state) => state);
  return (
    <div className="bench-bar" role="toolbar" aria-label="Bench">
      <button type="button" className="button" onClick={() => void commandOf('add-step').run()}>Add a step</button>
      <span className="button-set">
        <Do id="bench-zoom-out" says="−" label="Smaller" />
        <Do id="zoom-fit" says="See all" label="See all of the bench" />
        <Do id="bench-zoom-in" says="+" label="Larger" />
      </span>
      <Percent />
      <button type="button" className="button" aria-pressed={notes} onClick={() => bench.setState({ notes: !notes })}>Notes</button>
      <button type="button" className="button" aria-pressed={overview} onClick={() => bench.setState({ overview: !overview })}>Overview</button>
    </div>
  );
}

function Do({ id, says, label }: { readonly id: string; readonly says: string; readonly label: string }) {
  return <button type="button" className="button" aria-label={label} onClick={() => void commandOf(id).run()}>{says}</button>;
}

function Percent() {
  const k = useStore(viewport, (state) => Math.round(state.k * 100));
  return <output className="bench-percent number" aria-label="Size of the cards">{k} %</output>;
}
