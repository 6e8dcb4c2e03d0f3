import { describe, expect, it } from 'vitest';
import { found, page, read, readPage } from './support.ts';

const D = 'd="M0 0H10V10Z"';

/** Width of the only stroke, or `none`; the style decides. */
function widthOf(body: string): string {
  const [stroke, ...rest] = readPage(body).strokes;
  expect(rest).toEqual([]);
  return stroke?.width === undefined ? 'none' : String(Math.round(stroke.width * 1e6) / 1e6);
}

// CSS Cascade 4 and Selectors 3: what is more specific wins, what comes later wins among equals, !important before all.
describe('the cascade', () => {
  const path = (style: string, attributes = '') => `<style>${style}</style><g class="outer"><path id="p" class="a b" ${D} fill="none" stroke="red" ${attributes}/></g>`;
  it.each([
    ['an attribute alone', '', 'stroke-width="2"', '2'],
    ['any rule before an attribute', '*{stroke-width:3}', 'stroke-width="2"', '3'],
    ['a type before any', 'path{stroke-width:4}*{stroke-width:3}', '', '4'],
    ['a class before a type', '.a{stroke-width:5}path{stroke-width:4}', '', '5'],
    ['two classes before one', '.a.b{stroke-width:6}.b{stroke-width:5}', '', '6'],
    ['an id before classes', '#p{stroke-width:7}.a.b{stroke-width:6}', '', '7'],
    ['a style before an id', '#p{stroke-width:7}', 'style="stroke-width:8"', '8'],
    ['an important one before a style', '*{stroke-width:9!important}', 'style="stroke-width:8"', '9'],
    ['an important style before an important rule', '#p{stroke-width:9!important}', 'style="stroke-width:8 ! important"', '8'],
    ['the later of equals', '.a{stroke-width:3}.b{stroke-width:4}', '', '4'],
    ['one of a list', 'rect, .b {stroke-width:4}', '', '4'],
    ['a descendant', 'svg .outer path{stroke-width:4}', '', '4'],
    ['a child', 'g > path{stroke-width:4}', '', '4'],
    ['no grandchild', 'svg > path{stroke-width:4}', '', '1'],
    ['an attribute selector', '[stroke="red"]{stroke-width:4}', '', '4'],
    ['an attribute selector by its beginning', 'path[id^=p]{stroke-width:4}', '', '4'],
    ['the root, inherited', ':root{stroke-width:4}', '', '4'],
    ['media for the screen', '@media screen{path{stroke-width:4}}', '', '4'],
    ['a comment inside', '/* x */path{/* y */stroke-width:/* z */4}', '', '4'],
    ['a faulty declaration skipped', 'path{stroke-width 9;stroke-width:4}', '', '4'],
    ['no state of the pointer', 'path:hover{stroke-width:4}', '', '1'],
  ])('%s', (_claim, style, attributes, expected) => {
    expect(widthOf(path(style, attributes))).toBe(expected);
    expect(found(readPage(path(style, attributes)))).toEqual([]);
  });

  it('of a next sibling', () => {
    expect(readPage(`<style>rect + path {stroke-width:4}</style><rect width="1" height="1"/><path ${D} stroke="red" fill="none"/>`).strokes[0]!.width).toBeCloseTo(4);
  });

  it.each([['path:nth-child(2){fill:none}', 'path:nth-child(2)'], ['a ~ b{fill:none}', 'a ~ b'], ['@import "x.css";', '@import "x.css"'],
    ['@media print{path{fill:none}}', '@media print']])('names what it leaves out: %s', (style, what) => {
    expect(found(readPage(`<style>${style}</style>`))).toEqual([`1 style rule left out: ${what}`]);
  });

  it('reads character data sections, and names sheets of other files', () => {
    expect(widthOf('<style type="text/css"><![CDATA[path{stroke:red;stroke-width:4;fill:none}]]></style><path d="M0 0h9"/>')).toBe('4');
    expect(found(read(`<?xml-stylesheet href="x.css"?>${page('')}`))).toEqual(['1 style rule left out: a style sheet of another file']);
    expect(found(readPage('<style type="text/less">a{}</style>'))).toEqual(['1 style rule left out: a style sheet for text/less']);
  });
});

describe('inheritance', () => {
  it.each([
    [`<g stroke="red" stroke-width="4" fill="none"><g><path ${D}/></g></g>`, '4'],
    [`<g style="stroke:red;stroke-width:4;fill:none"><path ${D} stroke-width="inherit"/></g>`, '4'],
    [`<g stroke="red" stroke-width="4" fill="none"><path ${D} stroke-width="initial"/></g>`, '1'],
    [`<g stroke="red" stroke-width="4" fill="none"><path ${D} style="stroke-width:2"/></g>`, '2'],
    [`<g stroke="red" fill="none"><path ${D} stroke="none"/></g>`, 'none'],
  ])('%s', (body, expected) => {
    expect(widthOf(body)).toBe(expected);
  });

  it('carries the fill rule and where a fill was stated', () => {
    expect(readPage(`<g fill-rule="evenodd"><path ${D}/></g>`).outlines[0]!.fillRule).toBe('evenodd');
    expect(found(readPage('<g fill="blue"><path d="M0 0H9V9"/></g>'))).toEqual(['1 open path with a fill']);
  });
});

describe('what is not shown is left out', () => {
  it.each([
    [`<path ${D} display="none"/>`, 0], [`<g style="display:none"><path ${D}/></g>`, 0], [`<path ${D} visibility="hidden"/>`, 0],
    [`<g visibility="hidden"><path ${D}/></g>`, 0], [`<g visibility="collapse"><path ${D}/></g>`, 0],
    [`<g visibility="hidden"><path ${D} visibility="visible"/></g>`, 1], [`<g display="none"><path ${D} display="inline"/></g>`, 0],
    [`<style>.off{display:none}</style><path class="off" ${D}/><path ${D}/>`, 1],
    [`<defs><path ${D}/></defs>`, 0], [`<symbol><path ${D}/></symbol>`, 0], [`<clipPath><path ${D}/></clipPath>`, 0],
    [`<marker><path ${D}/></marker>`, 0], [`<pattern><path ${D}/></pattern>`, 0], [`<mask><path ${D}/></mask>`, 0],
    [`<x:layer xmlns:x="urn:other"><path ${D}/></x:layer>`, 0],
  ])('%s', (body, count) => {
    const { strokes, outlines, cautions } = readPage(body);
    expect([strokes.length, outlines.length, cautions.length]).toEqual([0, count, 0]);
  });

  it('an element wholly transparent, with a caution', () => {
    const drawing = readPage(`<g opacity="0"><path ${D}/></g>`);
    expect([drawing.outlines.length, ...found(drawing)]).toEqual([0, '1 wholly transparent element']);
  });
});

it('reads geometry from a style too', () => {
  expect(readPage('<style>circle{r:5px;cx:10px} path{d:path("M0 0H7")}</style><circle cy="3"/>').outlines[0]!.paths[0]!.start.x).toBeCloseTo(15);
  expect(readPage('<style>path{d:path("M0 0H7")}</style><path/>').strokes[0]!.path.segments[0]!.end.x).toBeCloseTo(7);
});
