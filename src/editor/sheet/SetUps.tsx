import { useEditor } from '../state/editor.ts';
import { lookAtSetUp } from './camera.ts';
import { capital, lyingWords } from './set-ups.ts';
import { useAlone } from './use-alone.ts';

/** Which set-up is looked at, all of them or one alone; nothing where there is only one. */
export function SetUps() {
  const picture = useEditor((state) => state.picture);
  const alone = useAlone();
  const list = picture?.setUps?.list;
  if (!list) return null;
  return (
    <select className="field sheet-set-ups" aria-label="Look at" value={alone ? alone.place : ''} onChange={({ target }) => lookAtSetUp(target.value === '' ? undefined : Number(target.value))}>
      <option value="">All set-ups</option>
      {list.map(({ name }, place) => <option key={place} value={place}>{capital(name)}</option>)}
    </select>
  );
}

/** How the sheet lies in the set-up looked at alone. */
export function Lying() {
  const alone = useAlone();
  return <p className="sheet-lying" role="status">{alone && `${capital(alone.setUp.name)} as it lies on the machine. ${lyingWords(alone)}`}</p>;
}
