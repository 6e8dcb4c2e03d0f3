import type { Outline } from '../../artwork/artwork.ts';
import { isSpace } from './cluster.ts';
import { joinsLost } from './joins.ts';
import { layOutLines, type PlacedCluster, sourceOf, standing } from './layout.ts';
import { withFont } from './open-font.ts';
import type { LayoutOptions, Laid } from './options.ts';
import { joinsApart, namesOf, noLetters, readPhrase } from './phrase.ts';
import type { TypeProblem, TypeProblems } from './problem.ts';
import { missingLetters } from './runs.ts';
import { setLine } from './set-line.ts';
import type { Typeface } from './typeface.ts';

export interface Typeset extends Laid {
  /** One for each glyph that shows anything; `source` names the characters it stands for. */
  readonly outlines: readonly Outline[];
}

type Typesetting = { readonly ok: true; readonly typeset: Typeset } | { readonly ok: false; readonly problems: TypeProblems };

/** Sets a phrase in a typeface. A letter that the typeface does not have, or that is empty in it, is a problem: no sign may miss one. */
export function typesetPhrase(text: string, typeface: Typeface, options: LayoutOptions): Typesetting {
  const { lines, cautions } = readPhrase(text);
  if (lines.length === 0) return { ok: false, problems: [noLetters(text)] };
  const work = withFont(() => {
    const missing = [...new Set(lines.flatMap((line) => missingLetters(line, typeface)))];
    return missing.length > 0 ? { ok: false, problems: [notThere(missing, typeface)] } as const : compose(lines, typeface, options);
  });
  if (!work.ok) return { ok: false, problems: [{ place: 'font', ...work.problems[0] }] };
  if (!work.value.ok) return work.value;
  const { typeset } = work.value;
  return { ok: true, typeset: { ...typeset, cautions: [...cautions, ...typeset.cautions] } };
}

function compose(texts: readonly string[], typeface: Typeface, options: LayoutOptions): Typesetting {
  const { size, shape, direction } = options;
  const spaced = options.letterSpacing * size !== 0;
  const lines = texts.map((line) => setLine(line, typeface, { capHeight: size, direction, ligatures: !spaced }));
  const empty = lines.flatMap(({ clusters }) => clusters).filter((cluster) => cluster.drawn.length === 0 && !isSpace(cluster) && /[\p{L}\p{N}]/u.test(cluster.text));
  if (empty.length > 0) return { ok: false, problems: [withoutOutline([...new Set(empty.map(({ text }) => text))], typeface)] };
  const layout = layOutLines(lines, options);
  if (!layout.ok) return layout;
  const { placed, plain, letters, lines: count, cautions } = layout.laid;
  const asDesigned = !spaced && shape.kind === 'straight';
  const apart = asDesigned ? [] : joinsApart(joinsLost(plain(), placed, size), options);
  return { ok: true, typeset: { outlines: placed.flatMap(outlinesOf), letters, lines: count, cautions: [...cautions, ...apart] } };
}

const outlinesOf = (one: PlacedCluster): Outline[] => standing(one).map((paths) => ({ paths, fillRule: 'nonzero', source: sourceOf(one) }));

const notThere = (missing: readonly string[], { name }: Typeface): TypeProblem => ({
  place: 'phrase', expected: `characters that ${name} has`, found: `${namesOf(missing)}, which it has not`, advice: 'Choose another typeface, give a font that has them, or write it otherwise.',
});

const withoutOutline = (empty: readonly string[], { name }: Typeface): TypeProblem => ({
  place: 'font', expected: 'a font with outlines for the letters of the phrase', found: `none in ${name} for ${namesOf(empty)}`, advice: 'Choose a font that is whole, and whose letters are outlines.',
});
