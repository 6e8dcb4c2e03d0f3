import { describe, expect, it } from 'vitest';
import { defineNode, renderNode, renderNodeText, summaryOf } from '../../src/runtime/index.ts';
import { catalogue } from './arithmetic.ts';

const rich = defineNode({
  name: 'rich', title: 'Rich | odd', doc: 'Takes 1.5 mm of everything. And *more* than that: a_b, which goes on for so long that it does not fit on a line of a terminal.',
  inputs: { main: { type: 'number', doc: 'The main one.' }, rest: { type: 'text', many: true, optional: true, doc: 'The\nrest.' } },
  outputs: { out: { type: 'number', doc: 'Out | comes.' } },
  params: {
    width: { kind: 'number', unit: 'mm', default: 0, min: -1, max: 9.5, step: 0.5, label: 'Width', doc: 'A width.' },
    share: { kind: 'number', unit: 'ratio', default: 0.5, min: 0, max: 1, step: 0.1, label: 'Share', doc: 'A share.' },
    flutes: { kind: 'number', unit: 'count', default: 2, min: 1, max: 8, step: 1, label: 'Flutes', doc: 'Cutting edges.' },
    join: { kind: 'choice', options: ['round', 'miter'], default: 'miter', label: 'Join', doc: 'Corners.' },
    words: { kind: 'text', default: '', maxLength: 20, label: 'Words', doc: 'Words.' },
    art: { kind: 'file', accept: ['.svg', '.txt'], label: 'Art', doc: 'A drawing.' },
    loud: { kind: 'switch', default: false, label: 'Loud', doc: 'Noise.' },
    marks: { kind: 'points', default: [{ x: 1, y: 2 }], label: 'Marks', doc: 'Places.' },
  },
  handles: [
    { kind: 'places', param: 'marks', from: 'out', sets: { join: 'round' }, doc: 'Drag a mark.' },
    { kind: 'move', outputs: ['out'], x: 'width', y: 'flutes', doc: 'Drag it.' },
  ],
  examples: [{ title: 'first', inputs: { main: 1, rest: [] } }, { title: 'second', inputs: { main: 2, rest: [] } }],
  compute: ({ main }) => ({ ok: true, outputs: { out: main } }),
});

it('renders a node as a section of Markdown', () => {
  expect(renderNode(rich)).toMatchInlineSnapshot(`
    "## Rich \\| odd (\`rich\`)

    Takes 1.5 mm of everything. And \\*more\\* than that: a\\_b, which goes on for so long that it does not fit on a line of a terminal.

    ### Inputs

    | name | takes | meaning |
    | --- | --- | --- |
    | \`main\` | number | The main one. |
    | \`rest\` | text, several wires, optional | The rest. |

    ### Outputs

    | name | takes | meaning |
    | --- | --- | --- |
    | \`out\` | number | Out \\| comes. |

    ### Parameters

    | name | takes | default | meaning |
    | --- | --- | --- | --- |
    | \`width\` | -1 to 9.5 mm | 0 mm | A width. |
    | \`share\` | 0 to 1 | 0.5 | A share. |
    | \`flutes\` | a whole number, 1 to 8 | 2 | Cutting edges. |
    | \`join\` | round \\| miter | miter | Corners. |
    | \`words\` | text, at most 20 characters | empty | Words. |
    | \`art\` | file: .svg, .txt | none | A drawing. |
    | \`loud\` | on \\| off | off | Noise. |
    | \`marks\` | points in mm | 1,2 | Places. |

    ### On the picture

    | name | takes | meaning |
    | --- | --- | --- |
    | \`marks, join\` | drag, add, take away | Drag a mark. |
    | \`width, flutes\` | drag | Drag it. |

    Examples: first; second.
    "
  `);
});

it('renders a node as plain text', () => {
  expect(renderNodeText(rich, 60)).toMatchInlineSnapshot(`
    "rich: Rich | odd

    Takes 1.5 mm of everything. And *more* than that: a_b, which
    goes on for so long that it does not fit on a line of a
    terminal.

    Inputs:
      main (number)
          The main one.
      rest (text, several wires, optional)
          The rest.

    Outputs:
      out (number)
          Out | comes.

    Parameters:
      width (-1 to 9.5 mm; default 0 mm)
          A width.
      share (0 to 1; default 0.5)
          A share.
      flutes (a whole number, 1 to 8; default 2)
          Cutting edges.
      join (round | miter; default miter)
          Corners.
      words (text, at most 20 characters; default empty)
          Words.
      art (file: .svg, .txt; default none)
          A drawing.
      loud (on | off; default off)
          Noise.
      marks (points in mm; default 1,2)
          Places.

    On the picture:
      marks, join (drag, add, take away)
          Drag a mark.
      width, flutes (drag)
          Drag it.

    Examples: first; second.
    "
  `);
});

describe.each([...catalogue.values(), rich])('of $name', (node) => {
  it('tables have as many cells in every row as in their head', () => {
    for (const table of renderNode(node).split('\n\n').filter((part) => part.startsWith('|')))
      expect(new Set(table.trim().split('\n').map((row) => row.split(/(?<!\\)\|/).length)).size).toBe(1);
  });

  it.each([renderNode(node), renderNodeText(node)])('everything declared is told', (text) => {
    for (const key of [node.name, ...Object.keys({ ...node.inputs, ...node.outputs, ...node.params })]) expect(text).toContain(key);
    expect(text).not.toMatch(/undefined|null|NaN|\[object/);
    expect(text).toMatch(/[^\n]\n$/);
  });

  it.each([20, 60, 80])('plain text keeps to %s columns but for single long words', (width) => {
    for (const line of renderNodeText(node, width).split('\n').slice(1)) expect(line.length <= width || !line.trim().includes(' '), line).toBe(true);
  });
});

it('has the first sentence as summary, decimals notwithstanding', () => {
  expect(summaryOf(rich)).toBe('Takes 1.5 mm of everything.');
  expect(summaryOf({ doc: 'No end' })).toBe('No end');
});
