import type { Evaluation } from '../../runtime/index.ts';
import { type Check, fileLength, handOver, nothingToRun, recipeChecks, worstStatus } from '../../values/index.ts';
import type { Desk } from './desk.ts';
import type { Outcome, PlacedCheck } from './protocol.ts';

/** What a whole evaluation hands over, in short; a graph with a node that could not compute hands over no file and has not passed. */
export function outcomeOf(desk: Desk, evaluation: Evaluation, graph: string): Outcome {
  const { catalogue } = desk;
  const checks = placedChecks(desk, evaluation);
  const document = desk.document();
  if (nothingToRun(document, catalogue, graph)) return { status: 'pass', checks, quantities: {}, files: [], keptBack: [] };
  const handed = handOver(document, catalogue, evaluation, { graph, draft: false });
  if (!handed.ok) return { status: 'fail', checks, quantities: {}, files: [], keptBack: [] };
  return {
    status: worstStatus(checks), checks, quantities: handed.report.quantities,
    files: handed.files.map((file) => ({ path: file.path, characters: fileLength(file) })),
    keptBack: handed.report.setups.flatMap(({ programs }) => programs.filter(({ written }) => !written).map(({ file }) => file)),
  };
}

function placedChecks({ document, catalogue }: Desk, { nodes }: Evaluation): PlacedCheck[] {
  const ofRecipe = recipeChecks(document(), catalogue).map(({ node, check }) => ({ ...check, node }));
  return ofRecipe.concat(document().nodes.flatMap(({ id, type }) => {
    const result = nodes.get(id);
    if (result?.state !== 'ready') return [];
    const ports = Object.entries(catalogue.get(type)?.outputs ?? {}).filter(([, output]) => output.type === 'checks');
    return ports.flatMap(([port]) => (result.outputs[port] as readonly Check[]).map((check) => ({ ...check, node: id })));
  }));
}
