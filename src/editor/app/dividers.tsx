import { Divider } from './Divider.tsx';
import { CHECKS_WIDTH, INITIAL_LAYOUT, SPLIT, arrange, useLayout } from './layout.ts';

/** Between sheet and bench. */
export function RoomsDivider() {
  const split = useLayout((layout) => layout.split);
  return (
    <Divider
      label="Height of the sheet" controls="sheet" divides="rows" value={split} range={SPLIT} even={50} step={5}
      says={(value) => `${String(Math.round(value))} percent`} valueAt={shareAt} onChange={(value) => arrange({ split: value })}
    />
  );
}

function shareAt(_x: number, y: number, divider: Element): number {
  const { top, height } = divider.parentElement!.getBoundingClientRect();
  return ((y - top) / height) * 100;
}

/** Between the sheet and the checks, which grow to the left. */
export function ChecksDivider() {
  const width = useLayout((layout) => layout.checksWidth);
  return (
    <Divider
      label="Width of the checks" controls="checks" divides="columns" value={width} range={CHECKS_WIDTH} even={INITIAL_LAYOUT.checksWidth} step={20} sense={-1}
      says={(value) => `${String(Math.round(value))} pixels`} valueAt={widthAt} onChange={(value) => arrange({ checksWidth: value })}
    />
  );
}

const widthAt = (x: number, _y: number, divider: Element): number => divider.parentElement!.getBoundingClientRect().right - x;
