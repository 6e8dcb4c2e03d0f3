import { editor } from '../state/editor.ts';
import type { DoubtSpot } from './doubts.ts';

/** Where strokes could have gone another way, one below the other. */
export function DoubtTable({ doubts }: { readonly doubts: readonly DoubtSpot[] }) {
  return (
    <table className="table">
      <caption className="sheet-caption">{`Doubts: ${doubts.length}. A pen might have gone another way here.`}</caption>
      <tbody>
        {doubts.map((doubt, index) => (
          <tr key={index}>
            <th scope="row" className="is-caution">! doubt {index + 1}</th>
            <td>
              {doubt.says} <button type="button" className="button-quiet" aria-label={`Show the place of doubt ${index + 1}`} onClick={() => editor.setState({ spot: doubt })}>Show the place</button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
