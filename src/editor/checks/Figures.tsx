import { amount } from '../../values/check.ts';
import { spaced } from '../files/words.ts';
import { useEditor } from '../state/editor.ts';

/** Weights, lengths and times of the job, folded away until they are wanted. */
export function Figures() {
  const quantities = useEditor(({ outcome }) => outcome?.quantities);
  const rows = Object.entries(quantities ?? {});
  if (rows.length === 0) return null;
  return (
    <details className="checks-figures">
      <summary>Figures of the job ({rows.length})</summary>
      <table className="table">
        <tbody>
          {rows.map(([name, { value, unit }]) => (
            <tr key={name}><th scope="row">{nameText(name)}</th><td className="number">{amount(value, unit)}</td></tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

/** A quantity's name as words: "cutLength" and "cut-length" are "Cut length"; what comes before a dot is its node. */
export function nameText(name: string): string {
  const [last = '', ...before] = name.split('.').reverse();
  const words = spaced(last).replaceAll('-', ' ');
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${before.length > 0 ? ` (${before.reverse().join('.')})` : ''}`;
}
