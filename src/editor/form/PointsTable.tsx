import type { Problem } from '../../runtime/index.ts';
import { useNumberEntry } from './NumberEntry.tsx';
import type { Points } from './points-text.ts';

/** Rows shown at a time: a long list would make every key press slow. */
const PAGE = 50;

interface TableProps {
  readonly points: Points;
  /** The chosen point. */
  readonly at: number;
  readonly label: string;
  readonly onChoose: (at: number) => void;
  readonly onSet: (points: Points) => void;
}

/** The points one below the other, each with two fields. */
export function PointsTable({ points, at, label, onChoose, onSet }: TableProps) {
  // The page follows the chosen point: turning it chooses the first point on it.
  const first = Math.floor(at / PAGE) * PAGE;
  const set = (index: number, axis: 'x' | 'y', value: number) => onSet(points.with(index, { ...points[index]!, [axis]: value }));
  return (
    <>
      <table className="form-table" aria-label={label}>
        <thead><tr><th scope="col"><span className="visually-hidden">Point</span></th><th scope="col">x, mm</th><th scope="col">y, mm</th></tr></thead>
        <tbody>
          {points.slice(first, first + PAGE).map(({ x, y }, i) => (
            <tr key={first + i} data-chosen={first + i === at} onFocus={() => onChoose(first + i)}>
              <th scope="row" className="number">{first + i + 1}</th>
              <Cell value={x} name={`x of point ${first + i + 1}, mm`} onCommit={(value) => set(first + i, 'x', value)} />
              <Cell value={y} name={`y of point ${first + i + 1}, mm`} onCommit={(value) => set(first + i, 'y', value)} />
            </tr>
          ))}
        </tbody>
      </table>
      {points.length > PAGE && <Pages first={first} of={points.length} onTurn={onChoose} />}
    </>
  );
}

function Pages({ first, of, onTurn }: { readonly first: number; readonly of: number; readonly onTurn: (at: number) => void }) {
  return (
    <div className="form-ways">
      <span className="form-says">{`${first + 1} to ${Math.min(first + PAGE, of)} of ${of}`}</span>
      <button type="button" className="button-quiet" aria-disabled={first === 0} onClick={() => onTurn(Math.max(0, first - PAGE))}>Earlier points</button>
      <button type="button" className="button-quiet" aria-disabled={first + PAGE >= of} onClick={() => onTurn(first + PAGE >= of ? first : first + PAGE)}>Later points</button>
    </div>
  );
}

/** Farthest from the origin, in mm, that a place may be typed: beyond every sheet, so more is a slip. */
const FARTHEST = 100_000;

function beyond(value: number): Problem | undefined {
  if (Math.abs(value) <= FARTHEST) return undefined;
  return { expected: `-${FARTHEST} to ${FARTHEST} mm`, found: `${value} mm`, advice: 'Give a place nearer to the sheet.' };
}

function Cell({ value, name, onCommit }: { readonly value: number; readonly name: string; readonly onCommit: (value: number) => void }) {
  const entry = useNumberEntry({ value, unit: 'mm', check: beyond, onCommit });
  return (
    <td>
      <input type="text" className="field number form-cell" aria-label={name} autoComplete="off" spellCheck={false} {...entry.field} />
      <output className="form-result">{entry.result}</output>
      <div className="field-refused">{entry.refusal}</div>
    </td>
  );
}
