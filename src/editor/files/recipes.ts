/** The recipes that come with the page, each loaded when it is asked for. */
const SHIPPED = import.meta.glob<string>('../../../graphs/*.json', { query: '?raw', import: 'default' });

/** What a person without a recipe of their own sees first. */
export const FIRST_RECIPE = 'drawn-strokes';

export interface Recipe {
  readonly id: string;
  readonly title: string;
  readonly notes: string;
}

const idOf = (path: string): string => path.replace(/^.*\//, '').replace(/\.json$/, '');

/** Rejects when there is no such recipe or it cannot be loaded. */
export async function readRecipe(id: string): Promise<string> {
  const entry = Object.entries(SHIPPED).find(([path]) => idOf(path) === id);
  if (entry === undefined) throw new Error(`there is no recipe ${id}`);
  return entry[1]();
}

export async function listRecipes(): Promise<readonly Recipe[]> {
  const ids = Object.keys(SHIPPED).map(idOf).sort();
  return Promise.all(ids.map(async (id) => {
    const { title, notes } = JSON.parse(await readRecipe(id)) as { title?: string; notes?: string };
    return { id, title: title ?? id, notes: notes ?? '' };
  }));
}
