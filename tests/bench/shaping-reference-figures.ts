import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { it } from 'vitest';
import { unpackFont } from '../../src/lettering/typeset/font-file/index.ts';
import { faceBytes } from '../lettering/faces/face.ts';
import { SHAPING_CASES } from '../lettering/typeset/shaping-cases.ts';
import { root } from '../support/command-line.ts';

/**
 * Renews what tests/lettering/typeset holds shaping against: has every case shaped by HarfBuzz's own command line, which Debian's
 * package libharfbuzz-bin holds. `npx vitest run --project figures tests/bench/shaping-reference-figures.ts`
 */
const OPTIONS = ['--no-glyph-names', '--output-format=json'];

it('records what hb-shape says', () => {
  const folder = mkdtempSync(join(tmpdir(), 'shaping-'));
  const cases = SHAPING_CASES.map((one) => {
    const font = join(folder, 'font.ttf');
    writeFileSync(font, unpackFont(faceBytes(one.face, one.subset)));
    const way = [`--script=${one.script}`, `--direction=${one.rightToLeft ? 'rtl' : 'ltr'}`, '--language=und'];
    const glyphs = JSON.parse(execFileSync('hb-shape', [...OPTIONS, ...way, font, one.text], { encoding: 'utf8' })) as unknown;
    return { ...one, glyphs };
  });
  rmSync(folder, { recursive: true });
  const version = execFileSync('hb-shape', ['--version'], { encoding: 'utf8' }).split('\n')[0]!;
  const lines = cases.map((one) => `    ${JSON.stringify(one)}`).join(',\n');
  writeFileSync(join(root, 'tests/lettering/typeset/hb-shape.json'), `{\n  "version": ${JSON.stringify(version)},\n  "command": "hb-shape ${OPTIONS.join(' ')} --script=… --direction=… --language=und FONT TEXT",\n  "cases": [\n${lines}\n  ]\n}\n`);
  console.log(`${version}: ${cases.length} cases`);
});
