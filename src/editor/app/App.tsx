import { Bench } from '../canvas/Bench.tsx';
import { Checks } from '../checks/Checks.tsx';
import { FileBar } from '../files/FileBar.tsx';
import { Help } from '../help/Help.tsx';
import { Playback } from '../playback/Playback.tsx';
import { Sheet } from '../sheet/Sheet.tsx';
import '../look/tokens.css';

/** The page: the sheet and its checks above, the bench line below. */
export function App() {
  return (
    <main>
      <FileBar />
      <Sheet />
      <Playback />
      <Checks />
      <Bench />
      <Help />
    </main>
  );
}
