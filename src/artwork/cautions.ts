import { type ArtworkProblem } from './problem.ts';
import { type XmlElement, shorten } from './xml.ts';

interface Wording {
  readonly expected: string;
  /** What was found, for one and for several. */
  readonly found: readonly [string, string];
  readonly advice: string;
}

/** Everything a drawing may hold that is not, or not wholly, carried over; the only place where it is worded. */
const WORDINGS = {
  text: { expected: 'lettering drawn as paths', found: ['text element', 'text elements'], advice: 'Left out: turn the text into paths in the drawing program.' },
  image: { expected: 'lines and shapes', found: ['picture', 'pictures'], advice: 'Left out: trace the picture into paths.' },
  foreign: { expected: 'lines and shapes', found: ['element of another kind of document', 'elements of another kind of document'], advice: 'Left out: draw what they show as paths.' },
  script: { expected: 'a drawing that stands still', found: ['script', 'scripts'], advice: 'Not run: save the drawing as it looks after the script.' },
  animation: { expected: 'a drawing that stands still', found: ['animation', 'animations'], advice: 'Not played: the drawing is read as it is written.' },
  clip: { expected: 'shapes drawn whole', found: ['clipping path', 'clipping paths'], advice: 'Shapes are read unclipped: apply the clipping in the drawing program.' },
  mask: { expected: 'shapes drawn whole', found: ['mask', 'masks'], advice: 'Shapes are read unmasked: apply the mask in the drawing program.' },
  filter: { expected: 'shapes drawn plainly', found: ['filter effect', 'filter effects'], advice: 'Shapes are read without the effect.' },
  gradient: { expected: 'plain colours', found: ['gradient or pattern as paint', 'gradients or patterns as paint'], advice: 'The whole shape is read as painted.' },
  marker: { expected: 'lines without markers', found: ['line with markers', 'lines with markers'], advice: 'Markers are left out: turn them into paths if they are to be cut.' },
  dash: { expected: 'unbroken lines', found: ['dashed line', 'dashed lines'], advice: 'Read as unbroken: turn dashes into paths if they are to be cut.' },
  unknown: { expected: 'elements of SVG 2', found: ['unknown element', 'unknown elements'], advice: 'Left out: check that nothing is missing.' },
  useMissing: { expected: 'a use element that names an element of this drawing', found: ['reference to nothing', 'references to nothing'], advice: 'Left out: expand copies into shapes in the drawing program.' },
  useCycle: { expected: 'use elements that do not contain themselves', found: ['circular reference', 'circular references'], advice: 'Left out: expand copies into shapes in the drawing program.' },
  pathData: { expected: 'path data to the end', found: ['fault in path data', 'faults in path data'], advice: 'The path is read up to the fault: check its end.' },
  value: { expected: 'attributes that can be read', found: ['value not understood', 'values not understood'], advice: 'The default is used instead: correct it in the drawing.' },
  transform: { expected: 'two-dimensional transforms', found: ['transform not understood', 'transforms not understood'], advice: 'Left out: check the position of what it moved.' },
  flat: { expected: 'a transform that keeps an area', found: ['element pressed to nothing by its transform', 'elements pressed to nothing by their transforms'], advice: 'Left out, as every viewer does.' },
  uneven: { expected: 'lines scaled alike in both directions', found: ['line whose width varies with its direction', 'lines whose width varies with their direction'], advice: 'The mean width is taken: undo the distortion, or state the width.' },
  fontUnit: { expected: 'lengths in mm, in, px or per cent', found: ['length measured by the font', 'lengths measured by the font'], advice: 'Read with a font of 16 px: write the length in mm.' },
  style: { expected: 'simple style rules', found: ['style rule left out', 'style rules left out'], advice: 'Style the shapes themselves, or by type, class or id.' },
  noSize: { expected: 'a page with width and height in mm', found: ['page without them', 'pages without them'], advice: 'Read at 96 units per inch: check one known dimension, and fit the drawing to it.' },
  pxSize: { expected: 'a page with width and height in mm', found: ['page measured in px', 'pages measured in px'], advice: 'Read at 96 px per inch: check one known dimension, and fit the drawing to it.' },
  openFilled: { expected: 'filled shapes that are closed', found: ['open path with a fill', 'open paths with a fill'], advice: 'Read as a stroke: close the path if it is a shape.' },
  unpainted: { expected: 'a fill or a stroke', found: ['path with neither', 'paths with neither'], advice: 'Read as a stroke: delete it if it is a helper line.' },
  hairline: { expected: 'lines with a width', found: ['line of width zero', 'lines of width zero'], advice: 'Read as a stroke without a width of its own.' },
  dot: { expected: 'lines with a length', found: ['dot', 'dots'], advice: 'Kept as a stroke of a single point: delete it if it is a leftover.' },
  lone: { expected: 'a line after every move', found: ['place moved to but not drawn from', 'places moved to but not drawn from'], advice: 'Left out, as every viewer does.' },
  empty: { expected: 'shapes with a size', found: ['shape of no size', 'shapes of no size'], advice: 'Left out, as every viewer does.' },
  transparent: { expected: 'opaque or hidden elements', found: ['wholly transparent element', 'wholly transparent elements'], advice: 'Left out: make it opaque if it is to be cut.' },
} as const satisfies Readonly<Record<string, Wording>>;

export type CautionKind = keyof typeof WORDINGS;

/** Different details told apart for one kind; a drawing may hold thousands, and nobody reads them all. */
const MOST_DETAILS = 8;

interface Entry {
  readonly kind: CautionKind;
  readonly place: string;
  readonly detail: string;
  count: number;
}

/** Gathers cautions: one for each kind and detail, with a count and the first place. */
export class Cautions {
  private readonly entries = new Map<string, Entry>();
  private readonly details = new Map<CautionKind, number>();

  add(kind: CautionKind, element: XmlElement, detail = ''): void {
    const known = this.entries.get(`${kind} ${detail}`);
    if (known) known.count += 1;
    else if ((this.details.get(kind) ?? 0) < MOST_DETAILS || detail === '') this.begin(kind, element, detail);
    else this.add(kind, element);
  }

  private begin(kind: CautionKind, element: XmlElement, detail: string): void {
    this.details.set(kind, (this.details.get(kind) ?? 0) + 1);
    this.entries.set(`${kind} ${detail}`, { kind, place: placeOf(element), detail, count: 1 });
  }

  list(): readonly ArtworkProblem[] {
    return [...this.entries.values()].map(({ kind, place, detail, count }) => {
      const { expected, found, advice }: Wording = WORDINGS[kind];
      const what = `${count} ${found[count === 1 ? 0 : 1]}`;
      return { place, expected, found: detail === '' ? what : `${what}: ${shorten(detail)}`, advice };
    });
  }
}

/** An element for a stroke's or outline's `source`: its id, or its name and number. */
export const nameOf = (element: XmlElement): string => {
  const id = element.attributes.get('id') ?? '';
  return id === '' ? `${element.name} ${element.ordinal}` : shorten(id);
};

export const placeOf = (element: XmlElement): string => `${nameOf(element)} (line ${element.line})`;
