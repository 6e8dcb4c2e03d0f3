import { useEditor } from '../state/editor.ts';
import { CheckTable } from './CheckTable.tsx';
import { DoubtTable } from './DoubtTable.tsx';
import type { DoubtSpot } from './doubts.ts';
import { type Written, isCheckLine, writtenAs } from './written.ts';

/** A value without a shape, large enough to be read: pairs and checks as a table, programs as they are written. */
export function Lines({ node, lines, doubts }: { readonly node: string; readonly lines: readonly string[]; readonly doubts: readonly DoubtSpot[] }) {
  const checks = useEditor((state) => state.outcome?.checks);
  const own = checks?.filter((check) => check.node === node) ?? [];
  const rest = own.length > 0 ? lines.filter((line) => !isCheckLine(line)) : lines;
  return (
    <div className="sheet-lines" tabIndex={0} role="region" aria-label="What came out, in words">
      {own.length > 0 && <CheckTable checks={own} />}
      {doubts.length > 0 && <DoubtTable doubts={doubts} />}
      {rest.length > 0 && <WrittenLines written={writtenAs(rest)} />}
    </div>
  );
}

function WrittenLines({ written }: { readonly written: Written }) {
  if (written.kind === 'program') return <pre className="sheet-program">{written.lines.join('\n')}</pre>;
  if (written.kind === 'words') return <>{written.lines.map((line, index) => <p key={index}>{line}</p>)}</>;
  return (
    <table className="table">
      <tbody>
        {written.rows.map(([name, value], index) => <tr key={index}><th scope="row">{name}</th><td className="number">{value}</td></tr>)}
      </tbody>
    </table>
  );
}
