import { it } from 'vitest';
import { pathLength, regionArea, type Region, regionBounds } from '../../src/geometry/index.ts';
import type { Lighting } from '../../src/lighting/index.ts';
import { type Channel, nestBoards } from '../../src/machining/index.ts';
import { executed, makeRunner, shippedGraph, withInputs } from '../support/shipped-run.ts';

/** Prints what a phrase of 25 letters takes from nothing to all files, and after one letter changed; and how well strip and sheet are used. Asserts nothing. */
const say = (line: string) => console.log(line);

const PHRASE = 'Warm bread from six,\nsoup after nine';
const graph = withInputs(shippedGraph('typed-phrase.json'), { phrase: PHRASE, finishedWidth: 2000, sheetWidth: 2400, sheetHeight: 1250, travelX: 1300, travelY: 1300 });

it('figures of a typed phrase', async () => {
  const run = makeRunner();
  const timed = async (document: typeof graph) => {
    const started = performance.now();
    const { results, evaluation } = await run(document);
    const ran = new Set(executed(evaluation));
    const nodes = [...evaluation.nodes].map(([id, { milliseconds }]) => ({ id, milliseconds, ran: ran.has(id) }));
    return { results, evaluation, took: performance.now() - started, nodes };
  };
  const cold = await timed(graph);
  say(`${PHRASE.replace(/[^a-z]/gi, '').length} letters, cold: ${(cold.took / 1000).toFixed(1)} s, ${cold.results.files.length + cold.results.setups.flatMap(({ programs }) => programs).length + 1} files, status ${cold.results.status}`);
  const slowest = [...cold.nodes].sort((a, b) => b.milliseconds - a.milliseconds).slice(0, 9);
  say(`  slowest: ${slowest.map(({ id, milliseconds }) => `${id} ${((100 * milliseconds) / cold.took).toFixed(0)} %`).join(', ')}`);
  for (const check of cold.results.checks.filter(({ status }) => status !== 'pass')) say(`  ${check.status}: ${check.says}`);
  const changed = await timed(withInputs(graph, { phrase: PHRASE.replace('nine', 'mine') }));
  say(`one letter changed: ${(changed.took / 1000).toFixed(1)} s, ${changed.nodes.filter(({ ran }) => ran).length} of ${changed.nodes.length} nodes`);
  sayLight(cold);
  sayNest(cold);
}, 600_000);

type Timed = { readonly evaluation: { readonly nodes: ReadonlyMap<string, { readonly state: string; readonly outputs?: Readonly<Record<string, unknown>> }> } };
const outputOf = <T>({ evaluation }: Timed, node: string, port: string): T => evaluation.nodes.get(node)!.outputs![port] as T;

function sayLight(timed: Timed): void {
  const lighting = outputOf<Lighting>(timed, 'wiring', 'lighting');
  const { centreLines } = outputOf<Channel>(timed, 'groove', 'channel');
  const module = lighting.strip.moduleLength;
  const whole = centreLines.reduce((sum, path) => sum + Math.floor(pathLength(path) / module) * module, 0);
  const groove = centreLines.reduce((sum, path) => sum + pathLength(path), 0);
  const strip = lighting.runs.flatMap(({ pieces }) => pieces).reduce((sum, { cutLength }) => sum + cutLength, 0);
  const jumpers = lighting.runs.flatMap((one) => one.jumpers).reduce((sum, { length }) => sum + length, 0);
  say(`light: groove ${(groove / 1000).toFixed(2)} m, strip ${(strip / 1000).toFixed(2)} m = ${((100 * strip) / groove).toFixed(1)} % lit; whole modules in every stroke would be ${(whole / 1000).toFixed(2)} m (${((100 * strip) / whole).toFixed(1)} %)`);
  say(`  ${lighting.runs.length} runs, jumpers ${(jumpers / 1000).toFixed(2)} m, ${lighting.dark.length} dark stretches, ${lighting.wiring!.supplies.length} supplies`);
}

function sayNest(timed: Timed): void {
  const board = outputOf<Region>(timed, 'board', 'board');
  const small = (scale: number): Region => ({ loops: board.loops.map((loop) => loop.map(({ x, y }) => ({ x: x * scale, y: y * scale }))) });
  for (const [name, boards] of [['8 copies of the board at 0.4', Array.from({ length: 8 }, () => small(0.4))], ['boards at 0.2 to 0.6', [0.6, 0.5, 0.5, 0.4, 0.3, 0.3, 0.2, 0.2].map(small)]] as const) {
    const started = performance.now();
    const { moves, height, bound } = nestBoards({ sheet: { width: 2400, height: 1250 }, boards, spacing: 12, edge: 15, turn: true }, () => undefined);
    const boxes = boards.reduce((sum, one) => { const { minX, minY, maxX, maxY } = regionBounds(one)!; return sum + (maxX - minX) * (maxY - minY); }, 0) / 2400;
    say(`nest: ${name}: ${moves.filter((move) => move !== undefined).length} of ${boards.length} laid, height ${height.toFixed(0)} mm, area bound ${bound.toFixed(0)} (${((100 * bound) / height).toFixed(0)} %), their boxes' bound ${boxes.toFixed(0)}, ${((100 * boards.reduce((sum, one) => sum + regionArea(one), 0)) / (2400 * 1250)).toFixed(0)} % of the sheet, ${(performance.now() - started).toFixed(0)} ms`);
  }
}
