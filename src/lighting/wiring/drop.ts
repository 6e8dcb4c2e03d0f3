/** What current passes through on its way along a run: strip that takes current evenly along its length, or wire that only passes it on. Both ways, ohm and A. */
export interface Element {
  readonly resistance: number;
  /** Current taken along it; 0 for a wire. */
  readonly amps: number;
}

/** Voltage lost along both wires of a pair: twice its length, mm, times the resistance of one, ohm/km, times the current. */
export const pairDrop = (length: number, ohmsPerKm: number, amps: number): number => 2 * (length / 1e6) * ohmsPerKm * amps;

const sumOf = (elements: readonly Element[]): number => elements.reduce((sum, { amps }) => sum + amps, 0);

/**
 * Voltage lost from the start of a chain to its far end, V, fed at the start alone. Strip evenly loaded loses R (J + i / 2), where J is what goes on
 * beyond it and i what it takes: the integral of (J + i (1 - x)) R over its length.
 */
export function dropFromStart(elements: readonly Element[]): number {
  let [left, drop] = [sumOf(elements), 0];
  for (const { resistance, amps } of elements) {
    drop += resistance * (left - amps / 2);
    left -= amps;
  }
  return drop;
}

/** How a chain fed at both ends shares its current, and the most voltage lost anywhere, V. */
export interface TwoFeeds {
  readonly first: number;
  readonly second: number;
  readonly drop: number;
}

/**
 * A chain fed at both ends through wires of so many ohms (there and back) from the same voltage. The drop around the whole loop is nothing:
 * R1 I1 + sum(R (I1 - taken before - i / 2)) = R2 (I - I1), which gives I1; the most is lost where the two currents meet.
 */
export function dropFromBoth(elements: readonly Element[], firstFeed: number, secondFeed: number): TwoFeeds {
  const total = sumOf(elements);
  let [taken, weighed, resistance] = [0, 0, 0];
  for (const element of elements) {
    weighed += element.resistance * (taken + element.amps / 2);
    resistance += element.resistance;
    taken += element.amps;
  }
  const loop = firstFeed + resistance + secondFeed;
  const first = loop > 0 ? (secondFeed * total + weighed) / loop : total / 2;
  return { first, second: total - first, drop: firstFeed * first + dropFromStart(upTo(elements, first)) };
}

/** The part of a chain that takes just this current. */
function upTo(elements: readonly Element[], amps: number): Element[] {
  const part: Element[] = [];
  let left = amps;
  for (const element of elements) {
    if (element.amps > left) {
      const share = left / element.amps;
      return [...part, { resistance: element.resistance * share, amps: left }];
    }
    part.push(element);
    left -= element.amps;
  }
  return part;
}
