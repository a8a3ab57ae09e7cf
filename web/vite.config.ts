import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url))
const apiPort = process.env.PORT ?? '4100'

/** No plugins: JSX is turned into Preact by Vite's own compiler. */
export default defineConfig({
  root: here('.'),
  publicDir: here('./public'),
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: here('../dist/web'),
    emptyOutDir: true,
    // Every file has an address of its own, so that a strict content policy needs no exception for `data:`.
    assetsInlineLimit: 0,
    rolldownOptions: {
      output: {
        assetFileNames: ({ names }) =>
          names.includes('LICENSE')
            ? 'assets/ysabeau-office-licence-[hash].txt'
            : 'assets/[name]-[hash][extname]',
      },
    },
  },
  server: {
    // The API answers to this port too; start.mjs says so.
    port: 5173,
    strictPort: true,
    fs: { allow: [here('..')] },
    proxy: { '/api': `http://127.0.0.1:${apiPort}` },
  },
})
