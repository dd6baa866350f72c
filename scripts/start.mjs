/**
 * `npx -y pnpm@12 start`: builds core and the viewer, prints a one-screen summary of the demo's
 * layout, and serves the viewer on this machine until it is stopped. PORT chooses another port.
 */
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { preview } from 'vite';
import { ROOT, build } from './build.mjs';

console.log('Building Halfcup …');
build();
const summary = execFileSync(
  process.execPath,
  ['packages/core/dist/cli/main.js', 'layout', 'fixtures/demo/plan.json'],
  { cwd: ROOT, encoding: 'utf8' },
);
console.log(`\n${summary}`);

const port = Number(process.env.PORT ?? 4173);
const server = await preview({
  root: join(ROOT, 'packages/viewer'),
  preview: { port, host: '127.0.0.1', strictPort: process.env.PORT !== undefined },
});
const address = server.resolvedUrls?.local[0] ?? `http://127.0.0.1:${port}/`;
console.log(`The viewer, with the demo plan open: ${address}\nStop it with Ctrl+C.`);
