/** Serves a built viewer as its users get it. */
import { join, resolve } from 'node:path';
import { preview } from 'vite';
import { ROOT } from './build.ts';

export interface Served {
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** On a free port. */
export async function serve(dist: string): Promise<Served> {
  const server = await preview({
    root: join(ROOT, 'packages/viewer'),
    build: { outDir: dist },
    preview: { port: 0, host: '127.0.0.1' },
    logLevel: 'error',
  });
  return { address: server.resolvedUrls!.local[0]!, close: () => server.close() };
}

/** Where the built viewer lies: `VIEWER_DIST`, else packages/viewer/dist. */
export const builtViewer = (): string => resolve(ROOT, 'packages/viewer', process.env['VIEWER_DIST'] ?? 'dist');
