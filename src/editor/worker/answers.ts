import type { Problem } from '../../runtime/index.ts';
import { handOver, nothingToRun, probeValues } from '../../values/index.ts';
import type { Desk } from './desk.ts';
import type { Painter } from './node-picture.ts';
import type { Players } from './playing.ts';
import type { Question, Questions } from './protocol.ts';
import { layersAround } from './set-ups.ts';

/** An answer, with the buffers that go over to the page without being copied; or why there is none. */
export type Answered<T> =
  | { readonly ok: true; readonly value: T; readonly transfer?: readonly Transferable[] }
  | { readonly ok: false; readonly problem: Problem };

/** What questions are answered from. */
export interface Knowledge {
  readonly desk: Desk;
  readonly painter: Painter;
  readonly players: Players;
}

type Answer<Q extends Question> = (knowledge: Knowledge, ask: Questions[Q]['ask']) => Answered<Questions[Q]['answer']>;

/** One function for every question the page may ask. */
export const ANSWERS: { readonly [Q in Question]: Answer<Q> } = {
  picture: ({ desk, painter }, { node }) => {
    const picture = painter.picture(node);
    return picture === undefined ? noResult(desk, node) : { ok: true, value: picture };
  },

  around: ({ desk }, { node }) => ({ ok: true, value: layersAround(desk, node) }),

  probe: ({ desk }, { node, at, within }) =>
    (desk.result(node) === undefined ? noResult(desk, node) : { ok: true, value: probeValues([...desk.outputs(node), ...desk.inputs(node)], at, within) }),

  playback: ({ players }, { node }) => {
    const found = players(node);
    if (!found.ok) return found;
    const programs = found.player.programs();
    return { ok: true, value: programs, transfer: programs.flatMap(({ places, seconds, feeds, lines }) => [places.buffer, seconds.buffer, feeds.buffer, lines.buffer]) };
  },

  relief: ({ players }, { node, program, seconds, dark }) => {
    const found = players(node);
    if (!found.ok) return found;
    const relief = found.player.relief(program, seconds, dark);
    return { ok: true, value: relief, transfer: [relief.pixels.buffer] };
  },

  files: ({ desk }, { graph, draft }) => {
    const [document, evaluation] = [desk.document(), desk.whole()];
    const nothing = nothingToRun(document, desk.catalogue, graph);
    if (nothing !== undefined) return { ok: false, problem: nothing };
    if (evaluation === undefined) return { ok: false, problem: notComputed(graph) };
    const handed = handOver(document, desk.catalogue, evaluation, { graph, draft });
    return handed.ok ? { ok: true, value: handed.files } : { ok: false, problem: handed.problems[0] };
  },
};

/** Refuses a question about a node that is not there or was not computed yet. */
function noResult(desk: Desk, node: string): { readonly ok: false; readonly problem: Problem } {
  const there = desk.node(node) !== undefined;
  return {
    ok: false,
    problem: {
      place: node, expected: 'a step with a result', found: there ? 'one that was not computed' : 'no such step',
      advice: there ? 'Wait until it is computed, or compute the graph again.' : 'Choose another step.',
    },
  };
}

function notComputed(graph: string): Problem {
  return { place: graph, expected: 'a graph that is computed to its end', found: 'one that was stopped before', advice: 'Compute it again, then take the files.' };
}
