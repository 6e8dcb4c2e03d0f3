import { useEditor } from '../state/editor.ts';
import { lookAtSetUp } from './camera.ts';
import { capital, lyingWords } from './set-ups.ts';
import { useAlone } from './use-alone.ts';

/** So many set-ups have a button each; more are in a list to choose from. */
const MOST_BUTTONS = 5;

/** Which set-up is looked at, all of them or one alone; nothing where there is only one. */
export function SetUps() {
  const picture = useEditor((state) => state.picture);
  const alone = useAlone();
  const list = picture?.setUps?.list ?? [];
  if (list.length < 2) return null;
  const names = ['All set-ups', ...list.map(({ name }) => capital(name))];
  const place = alone?.place;
  return (
    <div className="sheet-set-ups">
      {list.length > MOST_BUTTONS
        ? <select className="field" aria-label="Look at" value={place === undefined ? 0 : place + 1} onChange={({ target }) => lookAtSetUp(placeAt(Number(target.value)))}>
            {names.map((name, index) => <option key={index} value={index}>{name}</option>)}
          </select>
        : <span className="button-set" role="group" aria-label="Look at">
            {names.map((name, index) => <button key={index} type="button" className="button" aria-pressed={place === placeAt(index)} onClick={() => lookAtSetUp(placeAt(index))}>{name}</button>)}
          </span>}
      <p role="status">{alone ? `${capital(alone.setUp.name)} as it lies on the machine. ${lyingWords(alone)}` : ''}</p>
    </div>
  );
}

const placeAt = (index: number): number | undefined => (index === 0 ? undefined : index - 1);
