import { useEditor } from '../state/editor.ts';
import { showLayer, useSheet } from './store.ts';
import { plain } from './tape.ts';
import { decimalsAt } from './ticks.ts';
import { layerNames } from './words.ts';

/** Where the pointer is, and which layers are to be seen. */
export function SheetFoot() {
  return (
    <footer className="sheet-foot">
      <Position />
      <Layers />
    </footer>
  );
}

function Position() {
  const cursor = useSheet((state) => state.cursor);
  const decimals = useSheet((state) => Math.max(2, decimalsAt(state.view.scale)));
  const words = cursor ? `x ${plain(cursor.x, decimals)}  y ${plain(cursor.y, decimals)} mm` : 'x –  y – mm';
  return <p className="sheet-position number">{words}</p>;
}

function Layers() {
  const picture = useEditor((state) => state.picture);
  const hidden = useSheet((state) => state.hidden);
  const ground = useSheet((state) => state.ground);
  const names = picture ? layerNames(picture, ground) : [];
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
