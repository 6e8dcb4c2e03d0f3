import { Bench } from '../canvas/Bench.tsx';
import { FileBar } from '../files/FileBar.tsx';
import { Help } from '../help/Help.tsx';
import { AskedDialog } from '../recipe/AskedDialog.tsx';
import { RecipeForm } from '../recipe/RecipeForm.tsx';
import { allCommands } from './commands.ts';
import { Notices } from './Notices.tsx';
import { Place } from './Place.tsx';
import { RoomBoundary } from './RoomBoundary.tsx';
import { RoomsDivider } from './dividers.tsx';
import { Toolbar } from './Toolbar.tsx';
import { Upper } from './Upper.tsx';
import { useKeys } from './use-keys.ts';
import { useTitle } from './use-title.ts';
import { useLayout } from './layout.ts';
import './app.css';

/** The page: the sheet and its checks above, the bench line below; or the recipe's form beside the sheet. */
export function App() {
  const rooms = useLayout((layout) => layout.rooms);
  const split = useLayout((layout) => layout.split);
  useKeys(allCommands);
  useTitle();
  return (
    <div className="app" data-rooms={rooms}>
      <SkipLinks />
      <header className="app-head no-print">
        <h1 className="visually-hidden">Groovewright</h1>
        <div className="app-file"><RoomBoundary name="The file bar"><FileBar /></RoomBoundary></div>
        <Toolbar />
      </header>
      <main className="app-rooms" style={{ '--split': split }}>
        {rooms === 'form' && <Place id="form" name="Form"><RoomBoundary name="The form"><RecipeForm /></RoomBoundary></Place>}
        <Upper hidden={rooms === 'bench'} />
        {rooms === 'both' && <RoomsDivider />}
        <Place id="bench" name="Bench" hidden={rooms === 'sheet' || rooms === 'form'}><RoomBoundary name="The bench"><Bench /></RoomBoundary></Place>
      </main>
      <Notices />
      <RoomBoundary name="The recipe"><AskedDialog /></RoomBoundary>
      <RoomBoundary name="The help"><Help /></RoomBoundary>
    </div>
  );
}

const SKIPS = [['bench', 'To the bench'], ['sheet', 'To the sheet'], ['checks', 'To the checks']] as const;

/** First in the order of focus: nobody has to go through a place to reach another. */
function SkipLinks() {
  return (
    <nav className="app-skip no-print" aria-label="Skip">
      {SKIPS.map(([place, label]) => <a key={place} className="button visually-hidden" href={`#${place}`}>{label}</a>)}
    </nav>
  );
}
