import { memo } from 'react';
import { useEditor } from '../state/editor.ts';
import type { Finding } from './findings.ts';
import { canLookAt, lookAt, lookAtCard, whereText } from './look-at.ts';
import { STATUS } from './status.ts';

/** One finding. Its subject is the button that leads to its place; what is in order says less loudly what it says. */
export const FindingLine = memo(function FindingLine({ finding }: { readonly finding: Finding }) {
  const { status, subject, says, at, node, title } = finding;
  const { sign, word, look } = STATUS[status];
  const here = useEditor(({ spot }) => spot !== undefined && at !== undefined && spot.node === node && spot.at[0] === at[0] && spot.at[1] === at[1] && spot.says.startsWith(`${subject}: `));
  return (
    <li className="checks-line" data-status={status} data-here={here}>
      <span className={`checks-sign ${look}`} aria-hidden="true">{sign}</span>
      <div className="checks-said">
        {canLookAt(finding)
          ? <button type="button" className="checks-subject" aria-pressed={at && here} title={at ? 'Show the place on the sheet' : 'Show the card'} onClick={() => lookAt(finding)}><Word word={word} status={status} /> {subject}</button>
          : <p className="checks-subject"><Word word={word} status={status} /> {subject}</p>}
        <p className="checks-says">{says}</p>
        <p className="checks-where">
          {at ? <>{whereText({ ...finding, title: '' })} · </> : null}
          {node !== undefined && <button type="button" className="checks-card" title="Show the card" onClick={() => lookAtCard(finding)}>{title}</button>}
        </p>
      </div>
    </li>
  );
});

/** The word is drawn for what is not in order; for what is, the sign is enough to the eye. */
function Word({ word, status }: { readonly word: string; readonly status: Finding['status'] }) {
  return <span className={status === 'pass' ? 'visually-hidden' : `checks-word ${STATUS[status].look}`}>{word}:</span>;
}
