import { beforeAll, describe, expect, it } from 'vitest';
import type { PlayedProgram } from '../../../src/editor/worker/protocol.ts';
import { catalogue, shippedGraph } from '../../support/shipped-run.ts';
import { converse } from '../worker/conversation.ts';

const graph = shippedGraph('drawn-strokes.json');
const idOf = (type: string) => graph.nodes.find((node) => node.type === type)!.id;
const page = converse(catalogue);
let programs: readonly PlayedProgram[];
beforeAll(async () => {
  await page.evaluate(graph, { seen: [idOf('emit-program')], whole: false });
  programs = await page.ask('playback', { node: idOf('emit-program') });
}, 60_000);

describe('the worker', () => {
  it('plays what the command line would write', () => {
    expect(programs).toHaveLength(1);
    expect(programs[0]!.text).toContain('G21');
    expect(programs[0]!.seconds.at(-1)).toBeGreaterThan(60);
    expect(programs[0]!.places).toHaveLength(3 * (programs[0]!.feeds.length + 1));
  });

  it('hands out arrays of their own each time, as those handed out before are gone', async () => {
    const again = await page.ask('playback', { node: idOf('emit-program') });
    expect(again[0]!.places.buffer).not.toBe(programs[0]!.places.buffer);
    expect(again[0]!.seconds.at(-1)).toBe(programs[0]!.seconds.at(-1));
  });

  it('shades the sheet that stands before the programs, though no wire brings it to their step', async () => {
    const relief = await page.ask('relief', { node: idOf('emit-program'), program: 0, seconds: 300, dark: false });
    expect(relief.box).toMatchObject({ minX: 0, minY: 0, maxX: expect.closeTo(1200, 0) as number, maxY: expect.closeTo(600, 0) as number });
    expect(new Set(relief.pixels).size).toBeGreaterThan(3);
  });

  it('plays at a step that programs only reach', async () => {
    const [found] = await page.ask('playback', { node: idOf('prove-cut') });
    expect(found!.text).toBe(programs[0]!.text);
  });

  it('says what to do where there is nothing to play', async () => {
    for (const node of [idOf('stock'), 'nobody'])
      await expect(page.ask('playback', { node })).rejects.toMatchObject({ found: 'none' });
    await expect(page.ask('relief', { node: idOf('stock'), program: 0, seconds: 0, dark: true })).rejects.toMatchObject({ expected: 'a step with programs' });
  });
});
