import { chooseWay, end, leave } from './hand/doing.ts';
import { nextWords } from './hand/hand-words.ts';
import { canEnd } from './hand/picking.ts';
import { useWay, useWays } from './hand/use-ways.ts';
import { isOpen } from './hand/ways.ts';
import { useSheet } from './store.ts';

/** The ways of working by hand on what is shown, what the present one does, and what to do next. */
export function Ways() {
  const ways = useWays();
  const way = useWay();
  const picked = useSheet((state) => state.picked);
  return (
    <>
      <span className="button-set sheet-ways" role="toolbar" aria-label="Work by hand">
        {ways.map(({ act, label, doc }) => (
          <button key={`${act} ${label}`} type="button" className="button" title={doc} aria-pressed={act === way?.act} onClick={() => chooseWay(act)}>{label}</button>
        ))}
      </span>
      {way && <p>{way.doc} {nextWords(way, picked)}</p>}
      {way && isOpen(way) && picked.length > 0 && (
        <span className="button-row">
          <button type="button" className="button" disabled={!canEnd(way, picked)} onClick={() => void end()}>End it here</button>
          <button type="button" className="button" onClick={() => void leave()}>Give it up</button>
        </span>
      )}
    </>
  );
}
