import { describe, expect, it } from 'vitest';
import {
  type Beam, beamOf, clampedLength, clampedSlope, clampedStress, clampedTip, freeLength, freeOverhang, holdingForce, overhangTip, spanLength, spanSag, spanSlope,
} from '../../../src/machining/index.ts';

/** The plank of the worked examples: 500 x 10 mm of cast acrylic, 1190 kg/m3, 3200 MPa. */
const PLANK = { width: 500, thickness: 10, density: 1190 };
const beam = beamOf(PLANK);
const rad = (degrees: number) => (degrees * Math.PI) / 180;

/** Integrates M / EI twice over a beam on supports at 0 and `back` with an overhang, to hold the formulas against something else. */
function integrated({ load, stiffness }: Beam, back: number, overhang: number): { readonly tip: number; readonly lift: number } {
  const steps = 20_000, dx = (back + overhang) / steps;
  const end = (load * back) / 2 - (load * overhang ** 2) / (2 * back);
  const edge = load * (back + overhang) - end;
  let [slope, rise] = [0, 0];
  const shape: [number, number][] = [[0, 0]];
  for (let i = 0; i < steps; i++) {
    const x = (i + 0.5) * dx;
    const moment = end * x + (x > back ? edge * (x - back) : 0) - (load * x * x) / 2;
    const bend = (moment / stiffness) * dx;
    rise += (slope + bend / 2) * dx;
    slope += bend;
    shape.push([x + dx / 2, rise]);
  }
  // The slope at 0 is what brings the second support to height 0.
  const atEdge = shape.reduce((a, b) => (Math.abs(b[0] - back) < Math.abs(a[0] - back) ? b : a));
  const level = shape.map(([x, y]) => [x, y - (atEdge[1] / atEdge[0]) * x] as const);
  return { tip: -level.at(-1)![1], lift: Math.max(...level.filter(([x]) => x <= back).map(([, y]) => y)) };
}

describe('beams under their own weight, against worked examples', () => {
  it('have the weight and stiffness of their section: 58.350 N/m, 133.33 N m2', () => {
    expect(beam.load * 1000).toBeCloseTo(58.350, 3);
    expect(beam.stiffness / 1e6).toBeCloseTo(133.33, 2);
  });

  // Roark, table 8.1 case 2a; Engineering Mechanics (open text), appendix B.2.
  it('clamped: 13.134 mm at 700 mm, 14.010 with 3000 MPa, 15.228 with 2760 MPa; slope 0.025017', () => {
    expect(clampedTip(beam, 700)).toBeCloseTo(13.134, 3);
    expect(clampedTip(beamOf({ ...PLANK, modulus: 3000 }), 700)).toBeCloseTo(14.010, 3);
    expect(clampedTip(beamOf({ ...PLANK, modulus: 2760 }), 700)).toBeCloseTo(15.228, 2);
    expect(rad(clampedSlope(beam, 700))).toBeCloseTo(0.025017, 6);
    expect(clampedStress(beam, 700, PLANK)).toBeCloseTo(1.7155, 4);
  });

  it('on two supports 1000 mm apart: 5.6982 mm, end slope 0.018234', () => {
    expect(spanSag(beam, 1000)).toBeCloseTo(5.6982, 4);
    expect(rad(spanSlope(beam, 1000))).toBeCloseTo(0.018234, 6);
  });

  // Machinery's Handbook beam table, from memory; numerical integration beside it.
  it('beyond two supports 800 mm apart by 700 mm: 26.613 mm', () => {
    expect(overhangTip(beam, 700, 800)).toBeCloseTo(26.613, 2);
    expect(integrated(beam, 800, 700).tip).toBeCloseTo(overhangTip(beam, 700, 800), 1);
  });

  it('free on a flat bed, 700 mm over its edge: tip 25.517 mm, lifts over 989.95 mm by up to 1.8470 mm', () => {
    const { tip, liftLength, lift } = freeOverhang(beam, 700, 1700);
    expect(tip).toBeCloseTo(25.517, 2);
    expect(liftLength).toBeCloseTo(989.95, 2);
    expect(lift).toBeCloseTo(1.8470, 4);
    expect(tip / clampedTip(beam, 700)).toBeCloseTo(1.9428, 4);
  });

  it('free with too little on the bed rests on its far end', () => {
    const { tip, lift, liftLength } = freeOverhang(beam, 700, 800);
    const numbers = integrated(beam, 800, 700);
    expect([liftLength, tip, lift]).toEqual([800, expect.closeTo(numbers.tip, 1), expect.closeTo(numbers.lift, 2)]);
  });

  it('the longest overhang for a sag gives that sag: 367.70 mm for 1 mm, 549.84 mm for 5 mm', () => {
    expect(clampedLength(beam, 1)).toBeCloseTo(367.70, 2);
    expect(clampedLength(beam, 5)).toBeCloseTo(549.84, 2);
    for (const sag of [0.5, 3, 20]) {
      expect(clampedTip(beam, clampedLength(beam, sag))).toBeCloseTo(sag, 9);
      expect(spanSag(beam, spanLength(beam, sag))).toBeCloseTo(sag, 9);
      expect(freeOverhang(beam, freeLength(beam, sag), 5000).tip).toBeCloseTo(sag, 9);
    }
  });

  it('a hold-down 700 mm behind the edge keeps 1300 mm beyond it from tipping 1100 mm on the bed with 20.006 N', () => {
    expect(holdingForce(beam, 1300, 1100, 700)).toBeCloseTo(20.006, 3);
    expect(holdingForce(beam, 1100, 1300, 700)).toBe(0);
  });

  it('sag as the fourth power of length and as one over the square of thickness', () => {
    expect(clampedTip(beam, 1400) / clampedTip(beam, 700)).toBeCloseTo(16, 9);
    expect(clampedTip(beamOf({ ...PLANK, thickness: 20 }), 700) / clampedTip(beam, 700)).toBeCloseTo(1 / 4, 9);
  });

  it('nothing hangs where nothing is beyond the edge', () => {
    expect(freeOverhang(beam, 0, 900)).toEqual({ tip: 0, slope: 0, liftLength: 0, lift: 0 });
  });
});
