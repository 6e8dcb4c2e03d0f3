import fc from 'fast-check';
import { produce } from 'immer';
import type { GraphDocument, Shapes } from '../../../src/runtime/index.ts';
import { type Alignment, align } from '../../../src/editor/model/arrange.ts';
import { removeAndBridge } from '../../../src/editor/model/bridging.ts';
import { cutOut, duplicate, pastePiece } from '../../../src/editor/model/clipboard.ts';
import { groupSteps, renameGroup, setCollapsed, ungroup } from '../../../src/editor/model/groups.ts';
import type { Edit } from '../../../src/editor/model/history.ts';
import { askFor, askNoLonger, moveInput, nameInput, spanInput, wordInput } from '../../../src/editor/model/inputs.ts';
import { insertOnWire } from '../../../src/editor/model/inserting.ts';
import { layOut } from '../../../src/editor/model/layout.ts';
import { addStep, moveSteps, removeSteps, renameStep, resetParam, setNote, setNotes, setParam, setTitle } from '../../../src/editor/model/steps.ts';
import { connect, disconnect, disconnectAll, refusalOfRewire, refusalOfWire, reorder, rewire } from '../../../src/editor/model/wiring.ts';
import { defaultOf } from '../../../src/runtime/index.ts';
import { endsOf, pick } from './graphs.ts';

/** What to do, in numbers that are made sense of in the document at hand. */
export interface Plan {
  readonly what: number;
  readonly a: number;
  readonly b: number;
  readonly some: readonly number[];
}

export const anyPlan: fc.Arbitrary<Plan> = fc.record({ what: fc.nat(9999), a: fc.nat(9999), b: fc.nat(9999), some: fc.array(fc.nat(9999), { maxLength: 4 }) });

interface Scene {
  readonly shapes: Shapes;
  readonly document: GraphDocument;
  readonly a: number;
  readonly b: number;
  /** Ids of some nodes and groups. */
  readonly ids: readonly string[];
}

const NOTHING: Edit = () => undefined;
const nodeAt = ({ document, a }: Scene) => pick(document.nodes, a)?.id ?? 'nobody';
const wireAt = ({ document, a }: Scene) => pick(document.wires, a) ?? { from: 'nobody.x', to: 'nobody.y' };
const groupAt = ({ document, a }: Scene) => pick(document.groups, a)?.id ?? 'nobody';
const paramAt = ({ shapes, document, a, b }: Scene) => pick(Object.entries(shapes.get(pick(document.nodes, a)?.type ?? '')?.params ?? {}), b);
const typeAt = ({ shapes, b }: Scene) => pick([...shapes.keys()], b)!;
const inputNamed = (document: GraphDocument, a: number) => pick(document.inputs, a)?.name ?? 'nobody';
const WAYS: readonly Alignment[] = ['left', 'centre', 'right', 'top', 'middle', 'bottom', 'spread-x', 'spread-y'];

/** Every edit there is, by name. */
export const EDITS: Readonly<Record<string, (scene: Scene) => Edit>> = {
  addStep: (scene) => addStep(scene.document, typeAt(scene), [scene.a, scene.b]).edit,
  removeSteps: ({ ids }) => removeSteps(ids),
  removeAndBridge: ({ shapes, document, ids }) => removeAndBridge(shapes, document, ids).edit,
  moveSteps: ({ ids, a, b }) => moveSteps(ids, a - 5000, b - 5000),
  setParam: (scene) => {
    const [name, param] = paramAt(scene) ?? [];
    return name === undefined || param === undefined ? NOTHING : setParam(nodeAt(scene), name, param.kind === 'number' ? param.max : defaultOf(param));
  },
  resetParam: (scene) => resetParam(nodeAt(scene), paramAt(scene)?.[0] ?? 'nothing'),
  renameStep: (scene) => renameStep(nodeAt(scene), scene.b % 3 === 0 ? ' ' : `Title ${scene.b}`),
  setNote: (scene) => setNote(nodeAt(scene), scene.b % 3 === 0 ? '' : `Note ${scene.b}`),
  setTitle: ({ a }) => setTitle(a % 3 === 0 ? ' ' : `Graph ${a}`),
  setNotes: ({ a }) => setNotes(a % 3 === 0 ? '' : `Notes ${a}`),
  askFor: (scene) => askFor(scene.shapes, scene.document, nodeAt(scene), paramAt(scene)?.[0] ?? 'nothing'),
  askNoLonger: ({ document, a }) => askNoLonger(pick(document.inputs, a)?.sets ?? 'nobody.x'),
  moveInput: ({ document, a, b }) => moveInput(inputNamed(document, a), b % 2 === 0 ? 1 : -1),
  wordInput: ({ document, a, b }) => wordInput(inputNamed(document, a), (['label', 'help', 'group'] as const)[b % 3]!, b % 4 === 0 ? ' ' : `Word ${b}`),
  nameInput: ({ document, a, b }) => nameInput(document, inputNamed(document, a), b % 3 === 0 ? 'no name' : `name${b % 20}`),
  spanInput: ({ shapes, document, a, b }) => spanInput(shapes, document, inputNamed(document, a), b % 2 === 0 ? 'limits' : 'proved', b % 5 === 0 ? undefined : [b - 5000, a - 5000]),
  connect: ({ shapes, document, a, b }) => {
    const ends = endsOf(shapes, document);
    const one = pick(ends, a);
    const other = one && pick(ends.filter((to) => refusalOfWire(shapes, document, one, to) === undefined), b);
    return one === undefined || other === undefined ? NOTHING : connect(shapes, one, other);
  },
  rewire: (scene) => {
    const { shapes, document, b } = scene;
    const end = pick(endsOf(shapes, document).filter((to) => refusalOfRewire(shapes, document, wireAt(scene), to) === undefined), b);
    return end === undefined ? NOTHING : rewire(shapes, wireAt(scene), end);
  },
  reorder: ({ shapes, document, a, b }) => {
    const end = pick(endsOf(shapes, document), a);
    return end === undefined ? NOTHING : reorder(end, b % 3, b % 5);
  },
  disconnect: (scene) => disconnect(wireAt(scene)),
  disconnectAll: ({ shapes, document, a }) => {
    const end = pick(endsOf(shapes, document), a);
    return end === undefined ? NOTHING : disconnectAll(end);
  },
  insertNew: (scene) => {
    const done = insertOnWire(scene.shapes, scene.document, wireAt(scene), { type: typeAt(scene) });
    return done.ok ? done.edit : NOTHING;
  },
  insertPresent: (scene) => {
    const done = insertOnWire(scene.shapes, scene.document, wireAt(scene), { id: pick(scene.document.nodes, scene.b)?.id ?? 'nobody' });
    return done.ok ? done.edit : NOTHING;
  },
  paste: ({ document, ids, a, b }) => pastePiece(document, cutOut(document, ids), [a, b]).edit,
  duplicate: ({ document, ids }) => duplicate(document, ids).edit,
  groupSteps: ({ document, ids, a }) => groupSteps(document, ids, a % 3 === 0 ? '' : `Some ${a}`).edit,
  ungroup: (scene) => ungroup(groupAt(scene)),
  fold: (scene) => setCollapsed(groupAt(scene), scene.b % 2 === 0),
  renameGroup: (scene) => renameGroup(groupAt(scene), scene.b % 3 === 0 ? '' : `Group ${scene.b}`),
  align: ({ document, ids, a }) => align(document, ids, pick(WAYS, a)!),
  layOut: ({ shapes, document, ids }) => layOut(document, shapes, new Map(), ids),
};

export function editOf(shapes: Shapes, document: GraphDocument, { what, a, b, some }: Plan): Edit {
  const all = [...document.nodes, ...document.groups].map(({ id }) => id);
  const ids = some.flatMap((number) => pick(all, number) ?? []);
  return pick(Object.values(EDITS), what)!({ shapes, document, a, b, ids });
}

export const after = (document: GraphDocument, edit: Edit): GraphDocument => produce(document, edit);
