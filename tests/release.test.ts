/** A release: the version flow on a copy of the workspace's manifests, what the packing refuses, and what the two builds are compared by. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, it } from 'vitest';
import { ROOT } from './support/build.ts';

const TOLD = [
  'packages/core/package.json',
  'package.json',
  'packages/viewer/package.json',
  'packages/core/src/version.ts',
];
const copies: string[] = [];
afterAll(() => copies.forEach((folder) => rmSync(folder, { recursive: true, force: true })));

function must(program: string, args: readonly string[], cwd: string): string {
  const { status, stdout, stderr } = spawnSync(program, args, { cwd, encoding: 'utf8' });
  expect(status, `${stdout}${stderr}`).toBe(0);
  return stdout;
}

/** The workspace without its sources, committed, at the version 0.1.0. */
function workspace(): string {
  const folder = mkdtempSync(join(tmpdir(), 'halfcup-release-'));
  copies.push(folder);
  for (const file of [
    ...TOLD,
    'pnpm-workspace.yaml',
    '.changeset/config.json',
    '.changeset/README.md',
    'packages/core/CHANGELOG.md',
    'scripts/release.mjs',
    'scripts/reproducible.mjs',
  ]) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    cpSync(join(ROOT, file), join(folder, file));
  }
  writeFileSync(join(folder, '.gitignore'), 'node_modules\n');
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'));
  for (const args of [
    ['init', '-q', '-b', 'main'],
    ['add', '.'],
    // Whoever runs this may sign commits: these are nobody's.
    ['-c', 'user.name=A', '-c', 'user.email=a@example.org', '-c', 'commit.gpgSign=false', 'commit', '-qm', 'all'],
  ])
    must('git', args, folder);
  return folder;
}

const read = (folder: string, file: string): string => readFileSync(join(folder, file), 'utf8');
const release = (folder: string, ...args: readonly string[]): { status: number | null; stderr: string } =>
  spawnSync(process.execPath, ['scripts/release.mjs', ...args], { cwd: folder, encoding: 'utf8' });

it('every place that tells the version tells that of core, and the CHANGELOG has it', () => {
  const { version } = JSON.parse(read(ROOT, TOLD[0]!)) as { version: string };
  for (const file of TOLD)
    expect(read(ROOT, file), file).toMatch(
      new RegExp(`(?:"version": "|VERSION: string = ')${version.replaceAll('.', '\\.')}["']`, 'u'),
    );
  expect(read(ROOT, 'packages/core/CHANGELOG.md')).toContain(`\n## ${version}\n`);
});

it('a changeset becomes the next version in every place, and a section above the last one', () => {
  const folder = workspace();
  const { version: before } = JSON.parse(read(folder, TOLD[0]!)) as { version: string };
  writeFileSync(
    join(folder, '.changeset/kerb.md'),
    '---\n"@halfcup/core": minor\n---\n\nMeasure along the other kerb too.\n',
  );
  expect(release(folder, 'pack', 'out').stderr).toContain('.changeset/kerb.md is in no version yet');
  expect(release(folder, 'version').status).toBe(0);
  const [major, minor] = before.split('.').map(Number) as [number, number];
  const next = `${major}.${minor + 1}.0`;
  for (const file of TOLD) expect(read(folder, file), file).toContain(next);
  const log = read(folder, 'packages/core/CHANGELOG.md');
  expect(log.indexOf(`## ${next}`)).toBeGreaterThan(0);
  expect(log.indexOf('Measure along the other kerb too.')).toBeLessThan(log.indexOf(`## ${before}`));
  expect(
    must('git', ['status', '--porcelain'], folder)
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => line.slice(3))
      .toSorted(),
  ).toEqual([...TOLD, 'packages/core/CHANGELOG.md'].toSorted());
});

it('packs nothing from a tree with changes, or where a place tells another version, and says which', () => {
  const folder = workspace();
  writeFileSync(join(folder, TOLD[3]!), read(folder, TOLD[3]!).replace(/'\d+\.\d+\.\d+'/u, "'9.9.9'"));
  const { status, stderr } = release(folder, 'pack', 'out');
  expect(status).toBe(1);
  expect(stderr).toContain(`${TOLD[3]!} does not tell the version`);
  expect(stderr).toContain('the tree has changes that are not committed');
  expect(stderr).not.toMatch(/^\s+at /mu);
  expect(release(folder, 'ship').stderr).toContain('found "ship"; expected version or pack FOLDER');
});

it('two builds differ where a file is in one only or has other bytes, and nowhere else', async () => {
  const { differences } = (await import(pathToFileURL(join(ROOT, 'scripts/reproducible.mjs')).href)) as {
    differences: (one: ReadonlyMap<string, string>, other: ReadonlyMap<string, string>) => string[];
  };
  const one = new Map([
    ['a', '1'],
    ['b', '2'],
    ['c', '3'],
  ]);
  expect(
    differences(
      one,
      new Map([
        ['a', '1'],
        ['b', '4'],
        ['d', '3'],
      ]),
    ),
  ).toEqual(['b', 'c', 'd']);
  expect(differences(one, new Map(one))).toEqual([]);
});
