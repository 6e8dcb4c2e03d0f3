import { describe, expect, it } from 'vitest';
import { carriedSag, sideOverhangs, type Stock, supportDistances, supportsFor, tippingForce } from '../../../src/machining/index.ts';

/** The sheet of the worked examples, 2.4 m long and 500 x 10 mm in section, on a bed 900 mm long. */
const stock: Stock = { width: 2400, height: 500, thickness: 10, thicknessTolerance: 0.2, density: 1190, breakthrough: 0.3 };
const bed = { minX: 0, minY: 0, maxX: 900, maxY: 600 };
const tiles = [{ shift: [0, 0] }, { shift: [780, 0] }, { shift: [1500, 0] }] as const;
const hangs = sideOverhangs(stock, tiles, bed);

describe('a sheet longer than the bed', () => {
  it('hangs over on the side that lies beyond, in each set-up', () => {
    expect(hangs.map(({ setUp, side, beyond, edge }) => [setUp, side, beyond, edge])).toEqual([
      [0, 'right', 1500, 900], [1, 'left', 780, 780], [1, 'right', 720, 1680], [2, 'left', 1500, 1500],
    ]);
  });

  it('tips over where its middle lies beyond the edge, and says what holds it', () => {
    expect(hangs.map(({ tips }) => tips)).toEqual([true, false, false, true]);
    // REFERENCES: 1300 mm beyond, 1100 on the bed, clamp 700 behind the edge: 20.006 N.
    const [hang] = sideOverhangs(stock, [{ shift: [0, 0] }], { ...bed, maxX: 1100 });
    expect(tippingForce(hang!, 700)).toBeCloseTo(20.006, 3);
  });

  it.each([0.5, 2, 5])('is carried by the fewest supports that keep it within %d mm', (sag) => {
    for (const hang of hangs) {
      const distances = supportDistances(hang, sag);
      expect(carriedSag(hang, supportsFor(hang, sag))).toBeLessThanOrEqual(sag * (1 + 1e-9));
      const fewer = Array.from({ length: distances.length }, (_, i) => (hang.beyond * (i + 1)) / distances.length).slice(0, -1);
      const carried = fewer.map((distance) => ({ setUp: hang.setUp, axis: hang.axis, at: hang.edge + (hang.side === 'left' ? -distance : distance) }));
      expect(carriedSag(hang, carried)).toBeGreaterThan(sag);
    }
  });

  it('needs no support where it hangs over little, and none where it does not', () => {
    expect(supportDistances({ beyond: 200, beam: hangs[0]!.beam }, 1)).toEqual([]);
    expect(sideOverhangs({ ...stock, width: 800 }, [{ shift: [0, 0] }], bed)).toEqual([]);
  });

  it('is the same turned by a quarter', () => {
    const turned = sideOverhangs({ ...stock, width: 500, height: 2400 }, [{ shift: [0, 780] }], { minX: 0, minY: 0, maxX: 600, maxY: 900 });
    expect(turned.map(({ side, beyond, free }) => [side, beyond, free])).toEqual([['front', 780, hangs[1]!.free], ['back', 720, hangs[2]!.free]]);
  });
});
