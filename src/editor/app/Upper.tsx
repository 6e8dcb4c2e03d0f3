import { Checks } from '../checks/Checks.tsx';
import { Progress, useWorthTelling } from '../checks/Progress.tsx';
import { summaryOf, worstOf } from '../checks/findings.ts';
import { STATUS } from '../checks/status.ts';
import { useFindings } from '../checks/use-findings.ts';
import { Playback } from '../playback/Playback.tsx';
import { Sheet } from '../sheet/Sheet.tsx';
import { ChecksDivider } from './dividers.tsx';
import { Place } from './Place.tsx';
import { RoomBoundary } from './RoomBoundary.tsx';
import { seesChecks, toggleChecks, useLayout } from './layout.ts';
import { useNarrow } from './narrow.ts';

/** The sheet, and beside it (or folded below it) the checks. */
export function Upper({ hidden }: { readonly hidden: boolean }) {
  const layout = useLayout((now) => now);
  const narrow = useNarrow();
  const shown = seesChecks(layout, narrow);
  const beside = shown && !narrow;
  return (
    <>
      <div className="app-upper" hidden={hidden} data-checks={narrow ? 'below' : shown ? 'beside' : 'none'} style={{ '--checks-width': `${String(layout.checksWidth)}px` }}>
        <Place id="sheet" name="Sheet">
          <RoomBoundary name="The sheet"><Sheet /></RoomBoundary>
          <RoomBoundary name="The playback"><Playback /></RoomBoundary>
        </Place>
        {beside && <ChecksDivider />}
        {narrow && <ChecksFold open={shown} />}
        <Place id="checks" name="Checks" hidden={!shown}><RoomBoundary name="The list of checks"><Checks /></RoomBoundary></Place>
      </div>
      {!shown && <Aside />}
    </>
  );
}

/** The checks as one line: "1 caution, 14 in order". */
function ChecksFold({ open }: { readonly open: boolean }) {
  const findings = useFindings();
  const worst = worstOf(findings);
  return (
    <button type="button" className="app-fold" data-shows="checks" aria-expanded={open} aria-controls="checks" onClick={() => toggleChecks(true)}>
      {worst !== undefined && <span className={STATUS[worst].look} aria-hidden="true">{STATUS[worst].sign} </span>}
      <span>{summaryOf(findings) || 'No checks yet'}</span>
      <span className="app-fold-word">{open ? 'Fold' : 'Show'}</span>
    </button>
  );
}

/** Where the checks cannot be seen, a long computation is told over the bench's corner. */
function Aside() {
  const tells = useWorthTelling();
  return tells ? <div className="app-aside"><Progress /></div> : null;
}
