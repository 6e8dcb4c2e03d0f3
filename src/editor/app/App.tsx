import { type CSSProperties, type ReactNode, useRef } from 'react';
import { Bench } from '../canvas/Bench.tsx';
import { Checks } from '../checks/Checks.tsx';
import { FileBar } from '../files/FileBar.tsx';
import { Help } from '../help/Help.tsx';
import { Playback } from '../playback/Playback.tsx';
import { Sheet } from '../sheet/Sheet.tsx';
import { Divider } from './Divider.tsx';
import { RoomBoundary } from './RoomBoundary.tsx';
import { CHECKS_WIDTH, INITIAL_LAYOUT, SPLIT, arrange, useLayout } from './layout.ts';
import '../look/fonts.css';
import '../look/tokens.css';
import '../look/base.css';
import './app.css';

/** The page: the sheet and its checks above, the bench line below. */
export function App() {
  const rooms = useLayout((layout) => layout.rooms);
  return (
    <div className="app" data-rooms={rooms}>
      <SkipLinks />
      <header className="app-head"><RoomBoundary name="The file bar"><FileBar /></RoomBoundary></header>
      <Rooms />
      <RoomBoundary name="The help"><Help /></RoomBoundary>
    </div>
  );
}

function SkipLinks() {
  return (
    <nav className="app-skip" aria-label="Skip">
      <a className="button visually-hidden" href="#bench">To the bench</a>
      <a className="button visually-hidden" href="#sheet">To the sheet</a>
      <a className="button visually-hidden" href="#checks">To the checks</a>
    </nav>
  );
}

function Rooms() {
  const box = useRef<HTMLElement>(null);
  const { rooms, split, checksWidth, checksShown } = useLayout((layout) => layout);
  return (
    <main className="app-rooms" ref={box} data-checks={checksShown} style={{ '--split': split, '--checks-width': `${String(checksWidth)}px` } as CSSProperties}>
      <div className="app-upper" hidden={rooms === 'bench'}>
        <Place id="sheet" name="Sheet">
          <RoomBoundary name="The sheet"><Sheet /></RoomBoundary>
          <RoomBoundary name="The playback"><Playback /></RoomBoundary>
        </Place>
        {checksShown && <ChecksDivider />}
        <Place id="checks" name="Checks" hidden={!checksShown}><RoomBoundary name="The list of checks"><Checks /></RoomBoundary></Place>
      </div>
      {rooms === 'both' && <RoomsDivider box={box} />}
      <Place id="bench" name="Bench" hidden={rooms === 'sheet'}><RoomBoundary name="The bench"><Bench /></RoomBoundary></Place>
    </main>
  );
}

/** Can be focused, so that a click anywhere in it tells which place the keys are meant for. */
function Place({ id, name, hidden = false, children }: { readonly id: string; readonly name: string; readonly hidden?: boolean; readonly children: ReactNode }) {
  return <div className={`app-${id}`} id={id} tabIndex={-1} hidden={hidden} data-room={id} data-name={name}>{children}</div>;
}

function RoomsDivider({ box }: { readonly box: { readonly current: HTMLElement | null } }) {
  const split = useLayout((layout) => layout.split);
  const valueAt = (_x: number, y: number) => {
    const { top, height } = box.current!.getBoundingClientRect();
    return ((y - top) / height) * 100;
  };
  return (
    <Divider
      label="Height of the sheet" controls="sheet" divides="rows" value={split} range={SPLIT} even={50} step={5}
      says={(value) => `${String(Math.round(value))} percent`} valueAt={valueAt} onChange={(value) => arrange({ split: value })}
    />
  );
}

function ChecksDivider() {
  const width = useLayout((layout) => layout.checksWidth);
  return (
    <Divider
      label="Width of the checks" controls="checks" divides="columns" value={width} range={CHECKS_WIDTH} even={INITIAL_LAYOUT.checksWidth} step={20} sense={-1}
      says={(value) => `${String(Math.round(value))} pixels`}
      valueAt={(x) => document.documentElement.clientWidth - x} onChange={(value) => arrange({ checksWidth: value })}
    />
  );
}
