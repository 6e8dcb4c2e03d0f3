import type { Path } from '../../src/geometry/index.ts';
import { type Layout, type LayoutRequest, planLayout } from '../../src/lighting/index.ts';
import { EXAMPLE_STRIP, EXAMPLE_TUBE } from '../../src/values/examples.ts';

/** A layout in 10 mm tube with modules of 50 mm and 5 mm unlit at least at both ends. */
export const layoutOf = (centreLines: readonly Path[], more: Partial<LayoutRequest> = {}): Layout => planLayout({
  centreLines, strip: EXAMPLE_STRIP, tube: EXAMPLE_TUBE, stripDrop: 0.02, holesAt: 'pieces', leads: [], spareWire: 60, holeDiameter: 6, holesClear: false, leastEnd: 5, ...more,
});

export const piecesOf = ({ lighting }: Layout) => lighting.runs.flatMap(({ pieces }) => pieces);
