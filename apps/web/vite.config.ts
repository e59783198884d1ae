import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

/** The component library carries its few words in thirty languages; the page speaks one. */
function oneLanguage(): Plugin {
  const otherLanguage = /react-(aria|stately)[^/]*\/.*intl\/.*\/(?!en-US)[a-z]{2}-[A-Z]{2}\.m?js$/;
  return {
    name: 'one-language',
    enforce: 'pre',
    load(id) {
      return otherLanguage.test(id) ? 'export default {};' : null;
    },
  };
}

export default defineConfig({
  root: import.meta.dirname,
  plugins: [oneLanguage(), react()],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    // The server's content policy allows no data: addresses.
    assetsInlineLimit: 0,
    sourcemap: false,
  },
  // The workers are modules like the page and share its parts.
  worker: { format: 'es' },
  server: { proxy: { '/api': 'http://127.0.0.1:4680' } },
});
