/**
 * A second reader of RS274/NGC, written from the standard (NISTIR 6556) alone and sharing nothing with the source: the
 * words a program for a router needs, one regular expression, one switch. It trusts the form of the text; the strict
 * reader does not.
 */
export interface PlainMove {
  line: number;
  kind: 'rapid' | 'line' | 'arc';
  from: number[];
  to: number[];
  feed: number;
  centre?: number[];
  clockwise?: boolean;
  spindleOn: boolean;
}

const KNOWN = [0, 1, 2, 3, 4, 17, 20, 21, 40, 49, 54, 80, 90, 94];

export function plainRead(text: string): PlainMove[] {
  const moves: PlainMove[] = [];
  let here = [0, 0, 0];
  let unit = 1, feed = 0, motion = -1, spindleOn = false, ended = false;
  text.split(/\r?\n/).forEach((raw, index) => {
    const words = [...raw.replace(/\([^)]*\)/g, '').replace(/\s|%/g, '').toUpperCase().matchAll(/([A-Z])([-+.\d]+)/g)]
      .map((match) => [match[1]!, Number(match[2])] as const)
      .filter(([letter]) => letter !== 'N');
    if (words.length === 0) return;
    if (ended) throw new Error(`line ${index + 1} comes after the end`);
    const find = (letter: string) => words.find(([l]) => l === letter)?.[1];
    const all = (letter: string) => words.filter(([l]) => l === letter).map(([, value]) => value);

    if (find('F') !== undefined) feed = find('F')! * unit;
    for (const m of all('M')) {
      if (m === 3) spindleOn = true;
      else if (m === 5) spindleOn = false;
      else if (m !== 2 && m !== 30) throw new Error(`line ${index + 1}: M${m} has no place in a plain program`);
    }
    for (const g of all('G')) {
      if (!KNOWN.includes(g)) throw new Error(`line ${index + 1}: G${g} has no place in a plain program`);
      if (g === 20) unit = 25.4;
      if (g === 21) unit = 1;
      if (g <= 3) motion = g;
      if (g === 80) motion = -1;
    }
    const axes = ['X', 'Y', 'Z'].map(find);
    if (axes.some((axis) => axis !== undefined)) {
      const to = axes.map((axis, k) => (axis === undefined ? here[k]! : axis * unit));
      const common = { line: index + 1, from: here, to, feed, spindleOn };
      if (motion === 0) moves.push({ ...common, kind: 'rapid' });
      else if (motion === 1) moves.push({ ...common, kind: 'line' });
      else if (motion === 2 || motion === 3) {
        const centre = [here[0]! + (find('I') ?? 0) * unit, here[1]! + (find('J') ?? 0) * unit];
        const radius = (p: number[]) => Math.hypot(p[0]! - centre[0]!, p[1]! - centre[1]!);
        if (Math.abs(radius(here) - radius(to)) > (unit === 1 ? 0.002 : 0.0002 * unit)) throw new Error(`line ${index + 1}: radii differ`);
        moves.push({ ...common, kind: 'arc', centre, clockwise: motion === 2 });
      } else throw new Error(`line ${index + 1}: no motion in force`);
      here = to;
    }
    if (all('M').some((m) => m === 2 || m === 30)) ended = true;
  });
  if (!ended) throw new Error('the program does not end');
  return moves;
}
