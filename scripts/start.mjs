/**
 * `npx -y pnpm@12 start`: builds core and the viewer, prints a one-screen summary of the demo's
 * layout, and serves the viewer on this machine until it is stopped.
 */
import { execFileSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { preview } from 'vite';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const run = (...command) => execFileSync(command[0], command.slice(1), { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });

console.log('Building Halfcup …');
run('pnpm', 'run', 'build');
const summary = execFileSync(process.execPath, ['packages/core/dist/cli/main.js', 'layout', 'fixtures/demo/plan.json'], { cwd: root, encoding: 'utf8' });
console.log(`\n${summary}`);

const port = Number(process.env.PORT ?? 4173);
const server = await preview({ root: join(root, 'packages/viewer'), preview: { port, host: '127.0.0.1', strictPort: process.env.PORT !== undefined } });
const address = server.resolvedUrls?.local[0] ?? `http://127.0.0.1:${port}/`;
console.log(`The viewer, with the demo plan open: ${address}\nStop it with Ctrl+C.`);
