/**
 * Makes the papers' font: a subset of Arimo (SIL Open Font License 1.1), whose letters are as wide as those of Arial
 * and Helvetica, as modules of core that hold its bytes and the widths of its letters, with its licence beside the
 * package. The same packages give the same bytes. `node scripts/makeFont.mjs [FOLDER]` writes the files.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Blob, Face, Font } from 'harfbuzzjs';
import subsetFont from 'subset-font';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');
const PACKAGE = dirname(createRequire(import.meta.url).resolve('@expo-google-fonts/arimo/package.json'));
const FACES = [
  ['REGULAR', '400Regular/Arimo_400Regular.ttf'],
  ['BOLD', '700Bold/Arimo_700Bold.ttf'],
];

const range = (from, to) => Array.from({ length: to - from + 1 }, (_, k) => String.fromCodePoint(from + k)).join('');

/** Latin-1, Latin Extended-A, what Azerbaijani, German, Romanian and Welsh want besides, and the signs that papers print. */
const SIGNS = [
  ...new Set(
    `${range(0x20, 0x7e)}${range(0xa0, 0x17f)}əȘșȚțẀẁẂẃẄẅẞỲỳ${range(0x2010, 0x2015)}‘’‚“”„†‡•…‰′″‹›⁄€№™←↑→↓↔√−≈≠≤≥\u202f\ufffd`,
  ),
].toSorted((a, b) => a.codePointAt(0) - b.codePointAt(0));

/** Of the font's own names keep who made it and under what licence: copyright, licence, its address (OpenType, `name`). */
const NAMES = [0, 13, 14];

const sourceOf = (path) => readFileSync(join(PACKAGE, path));

/** Advance widths in units of the font; throws where the font lacks one of the signs. */
function widthsOf(bytes) {
  const face = new Face(new Blob(bytes));
  const font = new Font(face);
  const widths = SIGNS.map((sign) => {
    const glyph = font.nominalGlyph(sign.codePointAt(0));
    if (!glyph) throw new Error(`the font has no U+${sign.codePointAt(0).toString(16)}`);
    return font.glyphHAdvance(glyph);
  });
  return { widths, em: face.upem };
}

const HEAD = '// Made by scripts/makeFont.mjs: change it there. ';

/** Every file that the font is made into, by its path from the root. */
async function fontFiles() {
  const text = SIGNS.join('');
  const made = await Promise.all(
    FACES.map(async ([name, path]) => ({
      name,
      ...widthsOf(sourceOf(path)),
      woff2: await subsetFont(sourceOf(path), text, { targetFormat: 'woff2', preserveNameIds: NAMES }),
    })),
  );
  const licence = readFileSync(join(PACKAGE, 'LICENSE_FONT'), 'utf8');
  const copyright = licence.split('\n', 1)[0];
  const escaped = SIGNS.map((sign) => `\\u${sign.codePointAt(0).toString(16).padStart(4, '0')}`).join('');
  return {
    bytes: made.map(({ woff2 }) => woff2.length),
    files: new Map([
      [
        'packages/core/src/papers/font/bytes.ts',
        `${HEAD}A subset of Arimo as WOFF2 in base64.
// ${copyright}; SIL Open Font License 1.1.

export const COPYRIGHT: string = ${quoted(copyright)};
${made.map(({ name, woff2 }) => `export const ${name}: string =\n  '${woff2.toString('base64')}';\n`).join('')}`,
      ],
      [
        'packages/core/src/papers/font/widths.ts',
        `${HEAD}Advance widths of Arimo, in units of which ${made[0].em} are an em.

export const EM: number = ${made[0].em};
/** The signs that the font holds, in the order of their widths. */
export const SIGNS: string =\n  '${escaped}';
${made.map(({ name, widths }) => `export const ${name}: string =\n  '${widths.join(' ')}';\n`).join('')}`,
      ],
      ['packages/core/FONT-LICENSE.txt', licence],
    ]),
  };
}

const quoted = (line) => `'${line.replaceAll("'", "\\'")}'`;

const folder = resolve(process.argv[2] ?? ROOT);
const { files, bytes } = await fontFiles();
for (const [path, content] of files) {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), content);
}
console.log(`woff2: ${bytes.join(' + ')} bytes`);
