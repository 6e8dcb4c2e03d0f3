import { chooseWay, end, leave } from './hand/doing.ts';
import { nextWords } from './hand/hand-words.ts';
import { canEnd } from './hand/picking.ts';
import { useWay, useWays } from './hand/use-ways.ts';
import { isOpen } from './hand/ways.ts';
import { useSheet } from './store.ts';

/** A bar with the ways of working by hand on what is shown, what the present one does, and what to do next; no bar where there are none. */
export function Ways() {
  const ways = useWays();
  const way = useWay();
  const picked = useSheet((state) => state.picked);
  if (ways.length === 0) return null;
  return (
    <div className="sheet-hand">
      <span className="button-set sheet-ways" role="toolbar" aria-label="Work by hand">
        {ways.map(({ act, label, doc }) => (
          <button key={`${act} ${label}`} type="button" className="button" title={doc} aria-pressed={act === way?.act} onClick={() => chooseWay(act)}>{label}</button>
        ))}
      </span>
      {way && <p>{picked.length === 0 && `${way.doc} `}{nextWords(way, picked)}</p>}
      {way && isOpen(way) && (
        <span className="button-row">
          <button type="button" className="button" disabled={!canEnd(way, picked)} onClick={() => void end()}>End it here</button>
          <button type="button" className="button" disabled={picked.length === 0} onClick={() => void leave()}>Give it up</button>
        </span>
      )}
    </div>
  );
}
