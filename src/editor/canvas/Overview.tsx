import { type KeyboardEvent, type PointerEvent, memo, useRef } from 'react';
import { useStore } from 'zustand';
import { type Box, around } from '../model/boxes.ts';
import { useEditor } from '../state/editor.ts';
import { currentView } from './current.ts';
import { type Lie, useLie } from './lie.ts';
import { seenBox, useBench, viewport } from './state.ts';
import { zoomBy } from './zoom.ts';

/** The whole bench, small, with a frame around what is seen. The frame is dragged, or moved by the arrow keys. */
export function Overview() {
  const shown = useBench((state) => state.overview);
  const boxes = useLie((state) => state.boxes);
  return shown && boxes.size > 0 ? <Map boxes={boxes} /> : null;
}

const SIZE = { width: 176, height: 104 };

function Map({ boxes }: Pick<Lie, 'boxes'>) {
  const seen = seenBox(useStore(viewport));
  const all = around([...boxes.values()])!;
  // The frame may lie beyond the cards: then the map shows less of it rather than shrinking them to nothing.
  const rim = Math.max(all.width, all.height) * 0.04;
  const view = { x: all.x - rim, y: all.y - rim, width: all.width + 2 * rim, height: all.height + 2 * rim };
  const scale = Math.min(SIZE.width / view.width, SIZE.height / view.height);
  const origin = { x: view.x - (SIZE.width / scale - view.width) / 2, y: view.y - (SIZE.height / scale - view.height) / 2 };
  const held = useRef(false);
  const go = ({ clientX, clientY, currentTarget }: PointerEvent<SVGSVGElement>) => {
    const { left, top } = currentTarget.getBoundingClientRect();
    centre(origin.x + (clientX - left) / scale, origin.y + (clientY - top) / scale);
  };
  return (
    <svg
      className="bench-overview" width={SIZE.width} height={SIZE.height} tabIndex={0} role="application" aria-roledescription="map"
      aria-label="Overview of the bench: arrow keys move what is seen, plus and minus zoom" onKeyDown={moveByKey}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        held.current = true;
        go(event);
      }}
      onPointerMove={(event) => held.current && go(event)}
      onLostPointerCapture={() => {
        held.current = false;
      }}
      viewBox={`${origin.x} ${origin.y} ${SIZE.width / scale} ${SIZE.height / scale}`}
    >
      <Cards boxes={boxes} />
      <rect className="bench-overview-seen" x={seen.x} y={seen.y} width={seen.width} height={seen.height} />
    </svg>
  );
}

/** All cards as one line each: cheap however many there are. */
const Cards = memo(function Cards({ boxes }: Pick<Lie, 'boxes'>) {
  const chosen = useEditor((state) => state.chosen);
  const draw = (list: readonly Box[]) => list.map(({ x, y, width, height }) => `M${x} ${y}h${width}v${height}h${-width}z`).join('');
  return (
    <>
      <path className="bench-overview-cards" d={draw([...boxes.values()])} />
      <path className="bench-overview-chosen" d={draw(chosen.flatMap((id) => boxes.get(id) ?? []))} />
    </>
  );
});

function centre(x: number, y: number): void {
  const { k, width, height } = viewport.getState();
  currentView()?.panTo(width / 2 - x * k, height / 2 - y * k);
}

/** Share of the view that an arrow key moves on. */
const STEP = 0.2;

function moveByKey(event: KeyboardEvent): void {
  const { width, height } = viewport.getState();
  const by = { ArrowLeft: [1, 0], ArrowRight: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
  if (by !== undefined) currentView()?.panBy(by[0]! * width * STEP, by[1]! * height * STEP);
  else if (event.key === '+' || event.key === '-') zoomBy(event.key === '+' ? 1.25 : 0.8);
  else return;
  event.preventDefault();
  event.stopPropagation();
}
