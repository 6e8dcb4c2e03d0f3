import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beside } from '../../../src/editor/help/beside.ts';

const window = { width: 1280, height: 800 };
const card = { width: 360, height: 180 };

describe('a card beside its target', () => {
  it('never leaves the window, whatever the target', () => {
    const size = fc.integer({ min: 0, max: 1500 });
    fc.assert(fc.property(fc.integer({ min: -500, max: 2000 }), fc.integer({ min: -500, max: 2000 }), size, size, (left, top, width, height) => {
      const at = beside({ left, top, width, height }, card, window);
      expect(at.left >= 0 && at.top >= 0 && at.left + card.width <= window.width && at.top + card.height <= window.height).toBe(true);
    }));
  });

  it('leaves a target in the window free where there is room above, below or beside it', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 1100 }), fc.integer({ min: 0, max: 700 }), fc.integer({ min: 10, max: 180 }), fc.integer({ min: 10, max: 100 }), (left, top, width, height) => {
      const at = beside({ left, top, width, height }, card, window);
      const apart = at.left + card.width <= left || at.left >= left + width || at.top + card.height <= top || at.top >= top + height;
      expect(apart).toBe(true);
    }));
  });

  it('lies in the corner of a target that fills the window', () => {
    expect(beside({ left: 0, top: 0, ...window }, card, window)).toEqual({ left: 1280 - 360 - 12, top: 800 - 180 - 12 });
  });
});
