import { defaultClientConditions, defineConfig } from 'vite';
import { offline } from './offline.ts';

/** Also written in index.html, so that it holds wherever the built files are served. */
const POLICY =
  "default-src 'self'; font-src 'self' data:; img-src 'self' data: blob: https:; connect-src 'self' https:; worker-src 'self'; object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

export default defineConfig({
  base: './',
  resolve: { conditions: ['@halfcup/source', ...defaultClientConditions] },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'es' },
  // An inlined asset would be a data: address, which the policy does not let the page fetch.
  build: {
    target: 'es2023',
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1200,
    rolldownOptions: {
      output: {
        // Many servers do not know .mjs, and browsers start no worker of an unknown type.
        assetFileNames: ({ names }) =>
          names.some((name) => name.endsWith('.mjs')) ? 'assets/[name]-[hash].js' : 'assets/[name]-[hash][extname]',
      },
    },
  },
  preview: { headers: { 'Content-Security-Policy': POLICY } },
  server: { fs: { allow: ['../..'] } },
  plugins: [
    offline(),
    {
      // The development server writes styles into the page, which the policy forbids.
      name: 'policy-only-when-built',
      apply: 'serve',
      transformIndexHtml: (html) => html.replace(/\s*<meta http-equiv="Content-Security-Policy"[^>]*>/u, ''),
    },
  ],
});
