/** A graph of both tiny nodes with everything exposed. */
export const TINY_GRAPH = {
  format: 'groovewright-graph', version: 1, title: 'Tiny', notes: '',
  nodes: [
    { id: 'drawing', type: 'tiny-drawing', title: 'The drawing', position: [0, 0], params: {} },
    { id: 'results', type: 'tiny-results', position: [200, 0], params: {} },
  ],
  wires: [{ from: 'drawing.width', to: 'results.width' }, { from: 'drawing.words', to: 'results.words' }],
  inputs: [
    ...['artwork', 'phrase', 'width', 'manner', 'bright'].map((name) => ({ name, label: name, help: `Sets ${name}.`, sets: `drawing.${name}` })),
    ...['bulk', 'sameName'].map((name) => ({ name, label: name, help: `Sets ${name}.`, sets: `results.${name}` })),
  ],
  groups: [],
};
