import { basename } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type NodeDeclaration, type Outcome, type Outputs, type Param, makeCatalogue, renderNode } from '../src/runtime/index.ts';
import { describeValue } from '../src/values/index.ts';

const modules = import.meta.glob<{ default: NodeDeclaration }>('../nodes/*.ts', { eager: true });
const tests = Object.keys(import.meta.glob('./nodes/*.test.ts'));
const nodes = Object.entries(modules).map(([path, { default: node }]) => ({ file: basename(path, '.ts'), node }));

type AnyCompute = (inputs: unknown, params: unknown, context: unknown) => Outcome<Outputs>;

const context = { checkpoint: () => undefined };

function run(node: NodeDeclaration, example: NodeDeclaration['examples'][number]): Outcome<Outputs> {
  const defaults = Object.fromEntries(Object.entries(node.params).map(([name, param]) => [name, param.kind === 'file' ? null : param.default]));
  return (node.compute as AnyCompute)(example.inputs, { ...defaults, ...example.params }, context);
}

function satisfies(param: Param): boolean {
  if (param.kind === 'choice') return param.options.includes(param.default);
  if (param.kind === 'number') return param.min <= param.default && param.default <= param.max && param.step > 0;
  return true;
}

describe.each(nodes)('$file', ({ file, node }) => {
  it('is named after its file', () => expect(node.name).toBe(file));
  it('has a test file of its own', () => expect(tests).toContain(`./nodes/${file}.test.ts`));

  it('documents itself and every port and parameter in sentences', () => {
    const docs = [node.doc, ...Object.values({ ...node.inputs, ...node.outputs, ...node.params }).map(({ doc }) => doc), ...(node.handles ?? []).map(({ doc }) => doc)];
    for (const doc of docs) expect(doc).toMatch(/^[A-Z0-9].*\.$/s);
  });

  it('gives every parameter a label and a default within its own limits', () => {
    for (const [name, param] of Object.entries(node.params)) {
      expect(param.label, name).toMatch(/^[A-Z]/);
      expect(satisfies(param), name).toBe(true);
    }
  });

  it.each(node.examples)('computes its example twice alike and leaves its inputs alone: $title', (example) => {
    const before = structuredClone(example.inputs);
    const first = run(node, example);
    expect(first).toMatchObject({ ok: true });
    expect(run(node, example)).toEqual(first);
    expect(example.inputs).toEqual(before);
    if (!first.ok) return;
    expect(Object.keys(first.outputs).sort()).toEqual(Object.keys(node.outputs).sort());
    expect(structuredClone(first.outputs)).toEqual(first.outputs);
    for (const [port, { type }] of Object.entries(node.outputs))
      expect(describeValue(type, first.outputs[port] as never), port).toMatch(/\S/);
  });
});

it('is a catalogue, handles and all', () => {
  expect(makeCatalogue(nodes.map(({ node }) => node)).size).toBe(nodes.length);
});

it('has no test of a node that is gone', () => {
  expect(tests.map((path) => basename(path, '.test.ts')).sort()).toEqual(nodes.map(({ file }) => file).sort());
});

it('keeps nodes/README.md as the rendered reference (run with -u to renew it)', async () => {
  const head = '# Nodes\n\nMade from the declarations in this folder; do not edit by hand.\n';
  await expect([head, ...nodes.map(({ node }) => renderNode(node))].join('\n')).toMatchFileSnapshot('../nodes/README.md');
});
