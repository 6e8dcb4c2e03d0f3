import { type ReactNode, useEffect, useState } from 'react';
import { Dialog } from '../look/Dialog.tsx';
import { openKept, openNew, openPicked, openRecipe, unlessUnsaved } from './open.ts';
import { type Recent, recentDocuments, recentText } from './recent.ts';
import { type Recipe, listRecipes } from './recipes.ts';
import { closeDialog } from './state.ts';
import { failed } from './told.ts';
import { clock } from './words.ts';

const act = (action: () => void | Promise<void>) => () => {
  closeDialog();
  void action();
};

/** Everything that can be opened: a file, an empty recipe, those that came with the page, those opened before. */
export function OpenDialog({ first }: { readonly first: 'recipes' | 'recent' }) {
  const recipes = useLoaded<Recipe>(listRecipes);
  const recent = useLoaded<Recent>(recentDocuments);
  const lists = [
    <List key="recipes" title="Shipped recipes" empty="None came with this page." items={recipes} line={recipeLine} />,
    <List key="recent" title="Recent" empty="Recipes you open or save are listed here." items={recent} line={recentLine} />,
  ];
  return (
    <Dialog title="Open" onClose={closeDialog} wide>
      <div className="button-row">
        <button type="button" className="button-first" data-first onClick={act(openPicked)}>Choose a file…</button>
        <button type="button" className="button" onClick={act(() => unlessUnsaved(openNew))}>Start an empty recipe</button>
        <span className="files-hint">or drag a recipe onto the page</span>
      </div>
      {first === 'recent' ? lists.reverse() : lists}
    </Dialog>
  );
}

/** Undefined until it is there. */
function useLoaded<T>(load: () => Promise<readonly T[]>): readonly T[] | undefined {
  const [items, setItems] = useState<readonly T[]>();
  useEffect(() => {
    let wanted = true;
    void load().catch(failed('The list could not be loaded. Load the page anew and try again.')).then((loaded) => { if (wanted) setItems(loaded ?? []); });
    return () => { wanted = false; };
  }, [load]);
  return items;
}

interface ListProps<T> {
  readonly title: string;
  readonly empty: string;
  readonly items: readonly T[] | undefined;
  readonly line: (item: T) => ReactNode;
}

function List<T extends { readonly id: string }>({ title, empty, items, line }: ListProps<T>) {
  return (
    <section className="files-list">
      <h3>{title}</h3>
      {items?.length === 0 ? <p className="files-hint">{empty}</p> : <ul className="files-items">{items?.map((item) => <li key={item.id}>{line(item)}</li>)}</ul>}
    </section>
  );
}

const recipeLine = ({ id, title, notes }: Recipe) => (
  <>
    <button type="button" className="button-quiet" onClick={act(() => unlessUnsaved(() => openRecipe(id)))}>{title}</button>
    <p>{notes}</p>
  </>
);

const recentLine = (recent: Recent) => (
  <>
    <button type="button" className="button-quiet" onClick={act(() => reopen(recent))}>{recent.title === '' ? recent.name : recent.title}</button>
    <p>{`${recent.name} · ${recent.unsaved ? 'left unsaved' : 'opened or saved'} ${clock(new Date(recent.when))}`}</p>
  </>
);

async function reopen(recent: Recent): Promise<void> {
  const text = await recentText(recent);
  await unlessUnsaved(() => openKept({ ...recent, text: text ?? '' }));
}
