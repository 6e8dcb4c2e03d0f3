import { useEditor } from '../state/editor.ts';
import { takeAll, takeOne, whyNoResults } from '../files/results.ts';
import { counted, sized } from '../files/words.ts';

/** Every file of the run; the programs stand in the head of the page, where a failing check holds them back. */
export function Take() {
  const outcome = useEditor((state) => state.outcome);
  const waiting = useEditor(whyNoResults);
  const computing = useEditor((state) => state.running.state === 'computing');
  return (
    <section className="recipe-take" aria-labelledby="recipe-take">
      <h3 id="recipe-take">Files</h3>
      {outcome === undefined && <p>{waiting}</p>}
      {outcome?.files.length === 0 && <p>No files: mend what failed first.</p>}
      {outcome !== undefined && outcome.files.length > 0 && (
        <>
          <ul className="recipe-files">
            {outcome.files.map(({ path, characters }) => (
              <li key={path}>
                <button type="button" className="button-quiet" aria-disabled={computing} onClick={computing ? undefined : () => void takeOne(path)}><code>{path}</code></button>
                <small>{sized(characters)}</small>
              </li>
            ))}
          </ul>
          <button type="button" className="button" aria-disabled={computing} onClick={computing ? undefined : () => void takeAll()}>
            {computing ? 'Still computing …' : `Take all ${counted(outcome.files.length, 'file')}`}
          </button>
        </>
      )}
    </section>
  );
}
