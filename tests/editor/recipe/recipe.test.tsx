// @vitest-environment happy-dom
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import axe from 'axe-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { AskedDialog } from '../../../src/editor/recipe/AskedDialog.tsx';
import { groupsOf } from '../../../src/editor/recipe/groups.ts';
import { needsOf } from '../../../src/editor/recipe/needs.ts';
import { RecipeForm } from '../../../src/editor/recipe/RecipeForm.tsx';
import { closeAsked, openAsked } from '../../../src/editor/recipe/state.ts';
import { editor, initialState, openDocument, present, undoStep } from '../../../src/editor/state/editor.ts';
import { type ExposedInput, type GraphDocument, listInputs } from '../../../src/runtime/index.ts';
import { REAL, TINY, graph } from '../model/graphs.ts';

const inputs: readonly ExposedInput[] = [
  { name: 'depth', label: 'How deep', help: 'Depth of the well.', group: 'Water', sets: 'a.depth', limits: [2, 20], proved: [4, 8] },
  { name: 'word', label: 'Word', help: '', group: 'Paper', sets: 'b.word' },
  { name: 'other', label: 'Second well', help: '', group: 'Water', sets: 'c.depth' },
];
const document = graph({ a: 'well', b: 'thin', c: 'well' }, ['a.ink -> b.ink'], { title: 'Wells', notes: 'What it is for.', inputs });

function open(one: GraphDocument = document) {
  openDocument(one, { name: 'test.json', saved: one });
  editor.setState({ shapes: TINY });
  return userEvent.setup({ delay: null });
}

// happy-dom knows no modal dialogs.
beforeEach(() => { HTMLDialogElement.prototype.showModal = function showModal() { this.open = true; }; });
afterEach(() => {
  closeAsked();
  cleanup();
  editor.setState(initialState);
});

const entry = (name: string) => screen.getByLabelText<HTMLInputElement>(name, { selector: 'input[type=text], textarea' });
const names = () => present().inputs.map(({ name }) => name);

describe('a recipe as a form', () => {
  it('asks under its headings in the order they come first', () => {
    expect(groupsOf(listInputs(document, TINY)).map(({ heading, inputs: members }) => [heading, members.map(({ name }) => name)])).toEqual([['Water', ['depth', 'other']], ['Paper', ['word']]]);
  });

  it('sets the parameter of the step, as one step of undo', async () => {
    const user = open();
    render(<RecipeForm />);
    await user.clear(entry('How deep'));
    await user.type(entry('How deep'), '7{Enter}');
    expect(present().nodes[0]!.params).toEqual({ depth: 7 });
    undoStep();
    expect(present().nodes[0]!.params).toEqual({});
  });

  it('puts a value back to what the recipe came with', async () => {
    const user = open({ ...document, nodes: document.nodes.map((node) => ({ ...node, params: node.id === 'a' ? { depth: 6 } : {} })) });
    render(<RecipeForm />);
    await user.clear(entry('How deep'));
    await user.type(entry('How deep'), '7{Enter}');
    await user.click(screen.getByText('Put back to 6 mm'));
    expect(present().nodes[0]!.params).toEqual({ depth: 6 });
  });

  it('keeps to the recipe’s own limits, and tells a value beyond what was proved', async () => {
    const user = open();
    render(<RecipeForm />);
    await user.clear(entry('How deep'));
    await user.type(entry('How deep'), '21{Enter}');
    expect(present().nodes[0]!.params).toEqual({});
    expect(screen.getByRole('alert').textContent).toContain('2 to 20');
    await user.keyboard('{Escape}');
    await user.clear(entry('How deep'));
    await user.type(entry('How deep'), '9{Enter}');
    expect(screen.getByText(/lies beyond/).textContent).toContain('Proved from 4 to 8 mm');
  });

  it('says that it asks for nothing where nothing is exposed, and has no fault an accessibility checker finds', async () => {
    open({ ...document, inputs: [] });
    const { container, unmount } = render(<RecipeForm />);
    expect(container.textContent).toContain('asks for nothing yet');
    unmount();
    open();
    const page = render(<RecipeForm />);
    const { violations } = await axe.run(page.container, { rules: { 'color-contrast': { enabled: false }, region: { enabled: false } } });
    expect(violations.map(({ id }) => id)).toEqual([]);
  });

  it('needs what steps give that take nothing in: a machine, a sheet, a cutter', () => {
    const shop = graph({ m: 'machine', s: 'stock', c: 'cutter', d: 'import-strokes' });
    expect(needsOf(shop, REAL).map(({ node }) => node)).toEqual(['m', 's', 'c']);
    expect(needsOf(graph({ a: 'allow-for-movement' }), REAL)).toEqual([]);
  });
});

describe('what the form asks for', () => {
  const item = (label: string) => within(screen.getByText(label, { selector: 'summary' }).closest('li')!);

  it('is put into order, worded and taken out', async () => {
    const user = open();
    openAsked();
    render(<AskedDialog />);
    await user.click(screen.getByLabelText('Move Word up'));
    expect(names()).toEqual(['word', 'depth', 'other']);
    await user.click(screen.getByLabelText('Take out Second well'));
    expect(names()).toEqual(['word', 'depth']);
    const label = item('Word').getByLabelText('Label');
    await user.clear(label);
    await user.type(label, 'Motto');
    expect(present().inputs[0]!.label).toBe('Motto');
  });

  it('has a name of its own, and limits within those of the step', async () => {
    const user = open();
    openAsked();
    render(<AskedDialog />);
    const name = item('How deep').getByLabelText('Name');
    await user.clear(name);
    await user.type(name, 'word');
    expect(name.getAttribute('aria-invalid')).toBe('true');
    await user.tab();
    expect(names()).toEqual(['depth', 'word', 'other']);
    const greatest = item('How deep').getByLabelText('Limits, greatest');
    await user.clear(greatest);
    await user.type(greatest, '30{Enter}');
    expect(present().inputs[0]!.limits).toEqual([2, 30]);
    await user.clear(greatest);
    await user.type(greatest, '100{Enter}');
    expect(present().inputs[0]!.limits).toEqual([2, 30]);
    await user.click(item('How deep').getAllByText('Take away')[0]!);
    expect(present().inputs[0]).not.toHaveProperty('limits');
  });
});
