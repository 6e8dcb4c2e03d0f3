import type { Outline, Stroke } from '../artwork/artwork.ts';
import type { Region } from '../geometry/region.ts';
import type { Channel } from '../machining/channel.ts';
import type { Cutter } from '../machining/cutter.ts';
import type { Hole } from '../machining/hole.ts';
import type { Router } from '../machining/machine.ts';
import type { Pass } from '../machining/pass.ts';
import type { SetUp } from '../machining/setup.ts';
import type { Stock } from '../machining/stock.ts';
import type { Tab } from '../machining/tab.ts';
import type { Check, Quantities, ResultFile } from './check.ts';

declare module '../runtime/node.ts' {
  interface PortTypes {
    strokes: readonly Stroke[];
    outlines: readonly Outline[];
    region: Region;
    channel: Channel;
    holes: readonly Hole[];
    stock: Stock;
    cutter: Cutter;
    machine: Router;
    passes: readonly Pass[];
    tabs: readonly Tab[];
    'set-ups': readonly SetUp[];
    checks: readonly Check[];
    quantities: Quantities;
    files: readonly ResultFile[];
  }
}
