/** Both pages, as plain files for any static server. The command needs no more: npx vite build packages/core/examples */
export default {
  base: './',
  // An inlined course would be a data: address, which the pages' policy does not let them fetch.
  build: {
    target: 'es2023',
    assetsInlineLimit: 0,
    emptyOutDir: true,
    rolldownOptions: { input: ['notebook/index.html', 'worker/index.html'] },
  },
  worker: { format: 'es' },
  server: { fs: { allow: ['../../..'] } },
};
