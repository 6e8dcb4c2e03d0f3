import type { Outline, Stroke } from '../artwork/artwork.ts';
import type { Materials } from '../costing/materials.ts';
import type { Price, Rates } from '../costing/price.ts';
import type { Region } from '../geometry/region.ts';
import type { JunctionMap } from '../lettering/repair/junction-map.ts';
import type { Strip } from '../lighting/strip.ts';
import type { Tube } from '../lighting/tube.ts';
import type { Lighting } from '../lighting/types.ts';
import type { PlacedImage } from '../lit/image.ts';
import type { Channel } from '../machining/job/channel.ts';
import type { Cutter } from '../machining/job/cutter.ts';
import type { Hole } from '../machining/job/hole.ts';
import type { Holding } from '../machining/job/holding.ts';
import type { Router } from '../machining/job/machine.ts';
import type { Pass } from '../machining/job/pass.ts';
import type { Registration } from '../machining/job/registration.ts';
import type { SetUp } from '../machining/job/setup.ts';
import type { Stock } from '../machining/job/stock.ts';
import type { Tab } from '../machining/job/tab.ts';
import type { Tiling } from '../machining/job/tiling.ts';
import type { Check, Quantities, ResultFile } from './check.ts';

declare module '../runtime/node.ts' {
  interface PortTypes {
    strokes: readonly Stroke[];
    outlines: readonly Outline[];
    junctions: JunctionMap;
    region: Region;
    channel: Channel;
    holes: readonly Hole[];
    stock: Stock;
    cutter: Cutter;
    machine: Router;
    passes: readonly Pass[];
    tabs: readonly Tab[];
    'set-ups': readonly SetUp[];
    tiling: Tiling;
    registration: Registration;
    holding: Holding;
    strip: Strip;
    tube: Tube;
    lighting: Lighting;
    image: PlacedImage;
    materials: Materials;
    rates: Rates;
    price: Price;
    checks: readonly Check[];
    quantities: Quantities;
    files: readonly ResultFile[];
  }
}
