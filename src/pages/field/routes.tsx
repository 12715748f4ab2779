import { createHash } from 'node:crypto';
import { type Context, Hono } from 'hono';
import { html, raw } from 'hono/html';
import { faceWords } from '../../field/face-words.js';
import type { Environment } from '../../http/environment.js';
import { frenchSpacing, type Language, languages, words } from '../../words/index.js';
import { assetAddress, assetText } from '../assets.js';

/** The words of the phone's pages, both languages, as JSON that no page can be broken by. */
const carried = JSON.stringify(
  Object.fromEntries(languages.map((language) => [language, wordsOf(language)])),
).replaceAll('<', '\\u003c');

function wordsOf(language: Language): Record<string, string> {
  const spaced = language === 'fr' ? frenchSpacing : (sentence: string) => sentence;
  return Object.fromEntries(faceWords.map((word) => [word, spaced(words(language, `face-${word}`, {}))]));
}

/** What the phone keeps to open the pages without network. */
const shell = (): string[] => ['/field', '/field/manifest.webmanifest', assetAddress('icon.svg')];

export function fieldPages(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/field', (c) => c.html(<FieldPage language={c.var.language} nonce={c.var.nonce} />))
    .get('/field/worker.js', (c) => {
      const addresses = shell();
      const version = createHash('sha256')
        .update(carried)
        .update(addresses.join())
        .update(assetText('field-worker.js'))
        .update(assetText('field.js'))
        .update(assetText('field.css'))
        .digest('hex')
        .slice(0, 12);
      const head = `const SHELL = ${JSON.stringify(addresses)};\nconst VERSION = ${JSON.stringify(version)};\n`;
      return c.body(`${head}${assetText('field-worker.js')}`, 200, {
        'Content-Type': 'text/javascript; charset=utf-8',
        'Cache-Control': 'no-cache',
        'Service-Worker-Allowed': '/field',
      });
    })
    .get('/field/manifest.webmanifest', manifest);
}

function manifest(c: Context<Environment>) {
  const title = words(c.var.language, 'page-field-title', {});
  const about = {
    name: `Underice: ${title}`,
    short_name: title,
    start_url: '/field',
    scope: '/field',
    display: 'standalone',
    background_color: '#f8f8f5',
    theme_color: '#0b4f5c',
    icons: [{ src: assetAddress('icon.svg'), sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
  };
  return c.body(JSON.stringify(about), 200, { 'Content-Type': 'application/manifest+json' });
}

/**
 * The page that the script fills: nothing of the group and nobody's name is in it, so a phone may keep it. Style and
 * script come within it: on a poor line each further question costs a second or two. Before the script runs it says
 * what comes first.
 */
function FieldPage({ language, nonce }: { language: Language; nonce: string }) {
  return html`<!doctype html>${(
    <html lang={language === 'fr' ? 'fr-CA' : 'en-CA'}>
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <meta name="theme-color" content="#0b4f5c" />
        <title>{words(language, 'page-field-title', {})}</title>
        <link rel="icon" href={assetAddress('icon.svg')} type="image/svg+xml" />
        <link rel="manifest" href="/field/manifest.webmanifest" crossorigin="use-credentials" />
        <style>{raw(assetText('field.css'))}</style>
        <script type="application/json" id="words">
          {raw(carried)}
        </script>
        <script type="module" nonce={nonce}>
          {raw(assetText('field.js'))}
        </script>
      </head>
      <body class="field">
        <main id="field">
          <h1>{words(language, 'face-title', {})}</h1>
          <p>{words(language, 'face-prepare-first', {})}</p>
          <p class="caution">{words(language, 'face-caution', {})}</p>
        </main>
      </body>
    </html>
  )}`;
}
