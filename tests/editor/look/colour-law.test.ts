import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../../../src/editor/', import.meta.url));
const TOKENS = 'look/tokens.css';
const FILES = readdirSync(ROOT, { recursive: true, encoding: 'utf8' }).filter((path) => /\.(css|tsx?|html)$/.test(path) && path !== TOKENS);

const NAMED = 'black|silver|gray|white|maroon|red|purple|fuchsia|green|lime|olive|yellow|navy|blue|teal|aqua|orange|pink|gold|brown|cyan|magenta|violet|indigo|beige|ivory|coral|crimson|tomato|salmon|khaki|orchid|plum|whitesmoke|(?:dark|light|medium|dim|slate|steel|royal|sky|forest|sea)(?:red|green|blue|gray|grey|orange|cyan|slategray)';
const FUNCTIONS = String.raw`\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch|color|color-mix|light-dark)\(`;
const HEX = String.raw`#(?:[0-9a-f]{3,4}|[0-9a-f]{6}|[0-9a-f]{8})\b`;
const EFFECTS = String.raw`\b(?:box-shadow|text-shadow|drop-shadow|boxShadow|textShadow|shadowBlur|shadowColor)\b|-gradient\(|createLinearGradient|createRadialGradient|createConicGradient|<linearGradient|<radialGradient`;

/** Values of declarations only: a class or a property may be called what it likes. */
const values = (css: string) => css.replaceAll(/\/\*[^]*?\*\//g, '').replaceAll(/url\([^)]*\)/g, '').match(/:[^:;{}]+(?=[;}])/g) ?? [];

/** A wash of a token, and an area of one token painted as an image, name nothing that the tokens do not. */
const FLAT = /color-mix\(in srgb, var\(--[\w-]+\) \d+%, transparent\)|linear-gradient\(var\((--[\w-]+)\), var\(\1\)\)/g;

function coloursInStyle(written: string): readonly string[] {
  const css = written.replaceAll(FLAT, '');
  const colour = new RegExp(`${HEX}|${FUNCTIONS}|(?<![-\\w'])(?:${NAMED})(?![-\\w'])`, 'gi');
  return [...values(css).flatMap((value) => value.match(colour) ?? []), ...(css.match(new RegExp(EFFECTS, 'g')) ?? [])];
}

/** A bare name in quotes is a colour only where something is painted with it. */
function coloursInCode(code: string): readonly string[] {
  const text = code.replaceAll(/\/\*[^]*?\*\/|(?<!:)\/\/.*$/gm, '');
  const quoted = new RegExp(`['"\`](?:${HEX}(?=['"\`])|${FUNCTIONS.slice(2)})`, 'gi');
  const painted = new RegExp(`(?:fill|stroke|color|background|fillStyle|strokeStyle)\\s*[=:]\\s*\\{?['"](?:${NAMED})['"]`, 'gi');
  return [quoted, painted, new RegExp(EFFECTS, 'g')].flatMap((pattern) => text.match(pattern) ?? []);
}

describe('the law of colour', () => {
  it('sees colours, shadows and gradients where they are', () => {
    expect(coloursInStyle('.a { color: red; background: #fff }')).toEqual(['red', '#fff']);
    expect(coloursInStyle('.a { border: 1px solid rgb(0 0 0); box-shadow: 0 0 1px }')).toEqual(['rgb(', 'box-shadow']);
    expect(coloursInStyle('.red { white-space: nowrap; color: var(--grey); grid-area: 1 / 2 }')).toEqual([]);
    expect(coloursInStyle('@import url(#fff); /* color: red; */ .a { mask: url("#b00") }')).toEqual([]);
    expect(coloursInStyle('.a { background: linear-gradient(var(--a), var(--a)); color: color-mix(in srgb, var(--a) 8%, transparent) }')).toEqual([]);
    expect(coloursInStyle('.a { background: linear-gradient(var(--a), var(--b)); color: color-mix(in srgb, red, var(--a)) }')).toEqual(['color-mix(', 'red', '-gradient(']);
    expect(coloursInCode(`<path fill="black" d="M0 0" stroke={'#123456'} />`)).toEqual([`'#123456`, `fill="black"`]);
    expect(coloursInCode('context.fillStyle = `rgb(0 0 0)`; context.shadowBlur = 3;')).toEqual(['`rgb(', 'shadowBlur']);
    expect(coloursInCode(`const kind = 'red'; // '#fff'\nconst id = '#bench';`)).toEqual([]);
  });

  it('knows the files of the editor', () => {
    expect(FILES.length).toBeGreaterThan(20);
  });

  it.each(FILES)('%s names no colour, shadow or gradient', (path) => {
    const text = readFileSync(ROOT + path, 'utf8');
    expect(path.endsWith('.css') ? coloursInStyle(text) : coloursInCode(text)).toEqual([]);
  });
});
