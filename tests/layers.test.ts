import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

/** What each room may import: other rooms and packages. Anything absent is forbidden. DEVELOPERS.md shows the same table. */
const ALLOWED: Record<string, readonly string[]> = {
  'src/geometry': ['clipper2-js'],
  'src/artwork': ['src/geometry', 'saxes', 'css-tree', 'fast-png', 'jpeg-js', 'fflate', 'd3-contour'],
  'src/lettering': [
    'src/geometry', 'src/artwork', 'delaunator', 'harfbuzzjs', 'bidi-js', 'brotli', 'fflate', '@fontsource/sacramento', '@fontsource/pacifico', '@fontsource/dancing-script',
    '@fontsource/great-vibes', '@fontsource/caveat', '@fontsource/patrick-hand', '@fontsource/varela-round', '@fontsource/barlow-condensed',
  ],
  'src/machining': ['src/geometry'],
  'src/lighting': ['src/geometry'],
  'src/lit': ['src/geometry', 'src/lighting', 'src/machining', 'fflate'],
  'src/costing': ['src/geometry', 'src/lighting', 'src/machining'],
  'src/papers': ['src/geometry', 'src/machining', 'src/costing', 'jspdf'],
  'src/values': ['src/geometry', 'src/artwork', 'src/lettering', 'src/machining', 'src/lighting', 'src/lit', 'src/costing', 'src/runtime'],
  'src/runtime': [],
  nodes: ['src/geometry', 'src/artwork', 'src/lettering', 'src/machining', 'src/lighting', 'src/lit', 'src/costing', 'src/papers', 'src/values', 'src/runtime'],
  'src/cli': ['src/runtime', 'src/values', 'nodes', 'node', 'csv-parse'],
  'src/editor': [
    'src/runtime', 'src/values', 'nodes', 'react', 'react-dom', 'rete', 'rete-area-plugin', 'immer', 'zustand', 'idb-keyval', 'fflate', '@dagrejs/dagre', '@fontsource/atkinson-hyperlegible-next',
    '@fontsource/atkinson-hyperlegible-mono',
  ],
};

const filesUnder = (dir: string): string[] =>
  !existsSync(join(root, dir)) ? [] : readdirSync(join(root, dir), { withFileTypes: true }).flatMap((e) =>
    e.isDirectory() ? filesUnder(join(dir, e.name)) : /\.tsx?$/.test(e.name) ? [join(dir, e.name)] : []);

const roomOf = (path: string) => Object.keys(ALLOWED).find((room) => path === room || path.startsWith(`${room}/`));

function targets(file: string): string[] {
  const { importedFiles } = ts.preProcessFile(readFileSync(join(root, file), 'utf8'), true, true);
  return importedFiles.map(({ fileName }) => {
    if (fileName.startsWith('node:')) return 'node';
    if (!fileName.startsWith('.')) return fileName.split('/').slice(0, fileName.startsWith('@') ? 2 : 1).join('/');
    const path = relative(root, join(root, dirname(file), fileName));
    return roomOf(path) ?? path;
  });
}

describe.each(Object.entries(ALLOWED))('%s imports only what it may', (room, allowed) => {
  const sideways = room === 'nodes' ? [] : [room];
  it.each(filesUnder(room).concat(`${room}/`))('%s', (file) => {
    const found = file.endsWith('/') ? [] : targets(file);
    expect(found.filter((t) => ![...allowed, ...sideways].includes(t))).toEqual([]);
  });
});

it.each(filesUnder('src/editor'))('%s leaves nodes, and all that computes, to the worker', (file) => {
  if (!file.startsWith('src/editor/worker/')) expect(/\bnodes\/\*|\/nodes\//.test(readFileSync(join(root, file), 'utf8')), 'mentions the folder of nodes').toBe(false);
});

it('knows every room there is', () => {
  const rooms = readdirSync(join(root, 'src')).map((name) => `src/${name}`);
  expect(rooms.filter((room) => !(room in ALLOWED))).toEqual([]);
});

it('is the table that DEVELOPERS.md shows', () => {
  const rows = [...readFileSync(join(root, 'DEVELOPERS.md'), 'utf8').matchAll(/^\| `([^`]+)` \|[^|]*\| ([^|]*) \|$/gm)];
  const shown = rows.map(([, room, may]) => [room, may === 'nothing' ? [] : may!.split(', ').sort()]);
  const short = (target: string) => target.replace('src/', '').replace(/^node$/, 'Node.js');
  expect(shown).toEqual(Object.entries(ALLOWED).map(([room, may]) => [room, may.map(short).sort()]));
});
