/**
 * Browsers that see only the fonts a test gives them: a fontconfig file of its own for each, with fonts from packages,
 * so that nothing rests on what the machine has. Elsewhere than on Linux a browser does not ask fontconfig.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Browser } from 'playwright-core';
import subsetFont from 'subset-font';
import { openBrowser } from './chromium.ts';

const folderOf = (name: string): string => dirname(createRequire(import.meta.url).resolve(`${name}/package.json`));
const DEJAVU = join(folderOf('dejavu-fonts-ttf'), 'ttf');
const ARIMO = folderOf('@expo-google-fonts/arimo');

/** What the system has: wide letters; letters as wide as Arial's and Liberation Sans's, under those names; no letter at all. */
export const FONT_SETS = ['DejaVu', 'Liberation', 'none'] as const;
export type FontSet = (typeof FONT_SETS)[number];

const alias = (name: string, family: string): string =>
  `<alias binding="same"><family>${name}</family><prefer><family>${family}</family></prefer></alias>`;

/** Chromium does not start without any font: one that holds a snowman and nothing else. */
async function snowman(folder: string): Promise<string> {
  const fonts = join(folder, 'fonts');
  mkdirSync(fonts, { recursive: true });
  writeFileSync(join(fonts, 'snowman.ttf'), await subsetFont(readFileSync(join(DEJAVU, 'DejaVuSans.ttf')), '☃'));
  return fonts;
}

/** A browser whose system has only these fonts; its fontconfig file and cache lie in `folder`. The caller closes it. */
export async function browserWith(set: FontSet, folder: string): Promise<Browser> {
  const own = join(folder, set);
  mkdirSync(own, { recursive: true });
  const fonts = set === 'Liberation' ? ARIMO : set === 'DejaVu' ? DEJAVU : await snowman(own);
  const family = set === 'Liberation' ? 'Arimo' : 'DejaVu Sans';
  const names = ['Liberation Sans', 'Arial', 'Helvetica', 'sans-serif'];
  const config = join(own, 'fonts.conf');
  writeFileSync(
    config,
    `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${fonts}</dir><cachedir>${join(own, 'cache')}</cachedir>${
      set === 'Liberation' ? names.map((name) => alias(name, family)).join('') : alias('sans-serif', family)
    }</fontconfig>`,
  );
  return openBrowser({ FONTCONFIG_FILE: config });
}
