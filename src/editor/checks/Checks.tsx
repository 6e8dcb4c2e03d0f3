import { flushSync } from 'react-dom';
import { toggleChecks } from '../app/layout.ts';
import { isNarrow } from '../app/narrow.ts';
import { useEditor } from '../state/editor.ts';
import { type Finding, summaryOf, worstOf } from './findings.ts';
import { FindingLine } from './FindingLine.tsx';
import { Figures } from './Figures.tsx';
import { Progress } from './Progress.tsx';
import { useFindings } from './use-findings.ts';
import './checks.css';

/** Every check of the graph: state, value, limit, place, what to do. */
export function Checks() {
  const findings = useFindings();
  return (
    <section className="checks" aria-labelledby="checks-title" data-tour="checks">
      <div className="checks-head">
        <h2 id="checks-title" className="checks-title">{headingOf(findings)}</h2>
        <button type="button" className="button-quiet checks-hide" aria-label="Hide the checks" onClick={hide}>Hide</button>
      </div>
      <Progress />
      {findings.length === 0 ? <Nothing /> : <ul className="checks-list">{findings.map((finding) => <FindingLine key={finding.key} finding={finding} />)}</ul>}
      <Figures />
      <p className="visually-hidden" role="status">{spoken(findings)}</p>
    </section>
  );
}

/** The focus goes on to the button that shows them again. */
function hide(): void {
  flushSync(() => toggleChecks(isNarrow()));
  document.querySelector<HTMLElement>('[data-shows=checks]')?.focus();
}

/** "To look at: 1 caution, 14 in order". */
export function headingOf(findings: readonly Finding[]): string {
  const worst = worstOf(findings);
  if (worst === undefined) return 'Checks';
  return worst === 'pass' ? `Nothing to mend: ${summaryOf(findings)}` : `To look at: ${summaryOf(findings)}`;
}

const SPOKEN: Readonly<Record<Finding['status'], string>> = {
  fail: 'Something failed. See the checks.',
  waiting: 'A step waits for another. See the checks.',
  caution: 'There is a caution. See the checks.',
  pass: 'All checks are in order.',
};

/** Changes only with the gravest status, so that it is read out only then. */
const spoken = (findings: readonly Finding[]): string => {
  const worst = worstOf(findings);
  return worst === undefined ? '' : SPOKEN[worst];
};

function Nothing() {
  const empty = useEditor(({ history }) => history.document.nodes.length === 0);
  const computing = useEditor(({ running }) => running.state === 'computing');
  if (computing) return <p className="checks-none">The checks come when the steps are computed.</p>;
  return (
    <p className="checks-none">
      {empty
        ? 'Here comes what to look at: every check with its value, its limit and its place on the sheet. Add a first step on the bench, or open a recipe.'
        : 'No step here checks anything yet. Steps that check (bends, the cut, the machine) tell here whether the sign can be cut.'}
    </p>
  );
}
