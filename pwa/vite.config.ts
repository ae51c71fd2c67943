import { svelte } from '@sveltejs/vite-plugin-svelte';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';

const manifest = {
  name: 'Pitgate: first-flight approvals',
  short_name: 'Pitgate',
  description: 'Desk, bench and field review of a home-built model before its first flight.',
  lang: 'en',
  start_url: '/',
  scope: '/',
  display: 'standalone' as const,
  background_color: '#fbf7ec',
  theme_color: '#fbf7ec',
  icons: [
    { src: '/icon-192.png', sizes: '192x192', type: 'image/png' },
    { src: '/icon-512.png', sizes: '512x512', type: 'image/png' },
    { src: '/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    { src: '/icon.svg', sizes: 'any', type: 'image/svg+xml' },
  ],
};

export default defineConfig({
  plugins: [
    svelte(),
    VitePWA({
      strategies: 'injectManifest',
      srcDir: 'src/sw',
      filename: 'sw.ts',
      registerType: 'prompt',
      injectRegister: false,
      includeManifestIcons: false,
      injectManifest: {
        globPatterns: ['**/*.{js,css,html,svg,png,wasm}'],
        maximumFileSizeToCacheInBytes: 12 * 1024 * 1024,
      },
      manifest,
    }),
  ],
  resolve: process.env['VITEST'] ? { conditions: ['browser'] } : {},
  build: { target: 'es2022', modulePreload: { polyfill: false } },
  server: {
    proxy: { '/v1': process.env['PITGATE_URL'] ?? 'http://127.0.0.1:8080' },
  },
  test: {
    environment: 'node',
    include: ['tests/unit/**/*.test.ts'],
  },
});
