import { useEditor } from '../state/editor.ts';
import { Lying } from './SetUps.tsx';
import { read } from './set-ups.ts';
import { showLayer, useSheet } from './store.ts';
import { plain } from './tape.ts';
import { decimalsAt } from './ticks.ts';
import { useAlone } from './use-alone.ts';
import type { Point } from './view.ts';
import { layerNames } from './words.ts';

/** Where the pointer is, and which layers are to be seen. */
export function SheetFoot() {
  return (
    <footer className="sheet-foot">
      <Position />
      <Lying />
      <Layers />
    </footer>
  );
}

function Position() {
  const cursor = useSheet((state) => state.cursor);
  const decimals = useSheet((state) => Math.max(2, decimalsAt(state.view.scale)));
  const alone = useAlone();
  const place = (at: Point | undefined) => (at ? `x ${plain(at.x, decimals)}  y ${plain(at.y, decimals)} mm` : 'x –  y – mm');
  const words = alone ? `program ${place(cursor && read(cursor, alone))} · sheet ${place(cursor)}` : place(cursor);
  return <p className="sheet-position number">{words}</p>;
}

function Layers() {
  const picture = useEditor((state) => state.picture);
  const hidden = useSheet((state) => state.hidden);
  const ground = useSheet((state) => state.ground);
  const around = useSheet((state) => state.around);
  const alone = useAlone();
  const names = picture ? layerNames(picture, ground, around, alone) : [];
  if (names.length === 0) return null;
  return (
    <fieldset className="sheet-layers">
      <legend>Layers</legend>
      {names.map((name) => (
        <label key={name}>
          <input type="checkbox" checked={!hidden.has(name)} onChange={({ target }) => showLayer(name, target.checked)} />
          {name}
        </label>
      ))}
    </fieldset>
  );
}
