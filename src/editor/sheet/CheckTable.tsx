import { editor } from '../state/editor.ts';
import { amount } from '../../values/check.ts';
import type { PlacedCheck } from '../worker/protocol.ts';

const WORDS = { pass: '✓ in order', caution: '! caution', fail: '✕ failed' } as const;
const CLASSES = { pass: '', caution: 'is-caution', fail: 'is-failed' } as const;
const RANK = { fail: 0, caution: 1, pass: 2 } as const;

/** The checks of one node, the worst first. */
export function CheckTable({ checks }: { readonly checks: readonly PlacedCheck[] }) {
  const sorted = checks.toSorted((a, b) => RANK[a.status] - RANK[b.status]);
  return (
    <table className="table">
      <thead><tr><th scope="col">State</th><th scope="col">Value</th><th scope="col">Limit</th><th scope="col">What it says</th></tr></thead>
      <tbody>{sorted.map((check, index) => <CheckRow key={index} check={check} />)}</tbody>
    </table>
  );
}

function CheckRow({ check: { status, value, limit, unit, says, at, node } }: { readonly check: PlacedCheck }) {
  return (
    <tr>
      <td className={CLASSES[status]}>{WORDS[status]}</td>
      <td className="number">{amount(value, unit)}</td>
      <td className="number">{amount(limit, unit)}</td>
      <td>
        {says}
        {at && <> <button type="button" className="button-quiet" onClick={() => editor.setState({ spot: { at, says, status, node } })}>Show the place</button></>}
      </td>
    </tr>
  );
}
