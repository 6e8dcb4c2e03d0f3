import type { JunctionMap } from '../../../values/picture.ts';
import { type Frame, type Point, toScreen } from '../view.ts';

/** Pixels a peg keeps from its junction at least, so that pegs can be told apart however small the junction is on the screen. */
export const PEG_AWAY = 20;
/** Pixels from peg to peg at least. */
const APART = 15;
/** Rounds of pushing pegs apart; a dozen settle what junctions have. */
const ROUNDS = 12;

/** A peg on its way: its direction from the junction, and how far off it is, CSS pixels. */
interface Peg {
  angle: number;
  readonly away: number;
}

/** Where the pegs of a junction's arms are, CSS pixels, in the order of the arms: out from the junction and apart from one another. */
export function pegPlaces({ at, arms }: JunctionMap['junctions'][number], frame: Frame): readonly Point[] {
  const centre = toScreen(frame, at);
  const pegs = arms.map((arm): Peg => {
    const place = toScreen(frame, arm.at);
    const [x, y] = [place.x - centre.x, place.y - centre.y];
    return { angle: Math.atan2(y, x), away: Math.max(PEG_AWAY, Math.hypot(x, y)) };
  });
  spread(pegs);
  return pegs.map(({ angle, away }) => ({ x: centre.x + away * Math.cos(angle), y: centre.y + away * Math.sin(angle) }));
}

/** Arms that set out side by side have their pegs turned away from one another. */
function spread(pegs: readonly Peg[]): void {
  if (pegs.length < 2) return;
  const around = pegs.toSorted((a, b) => a.angle - b.angle);
  for (let round = 0; round < ROUNDS; round++) {
    around.forEach((peg, i) => {
      const next = around[(i + 1) % around.length]!;
      const turn = next.angle - peg.angle + (i === around.length - 1 ? 2 * Math.PI : 0);
      const least = Math.min((1.8 * Math.PI) / around.length, 2 * Math.asin(APART / (2 * Math.max(PEG_AWAY, Math.min(peg.away, next.away)))));
      const short = Math.max(0, least - turn) / 2;
      peg.angle -= short;
      next.angle += short;
    });
  }
}
