// What can be read off the page's own files: its words are all there in Spanish, it reckons nowhere but in pixels, it names no
// place but its own.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { spanishOf } from '../page/from_app.mjs';
import { root } from './site.mjs';

const page = join(root, 'mobile', 'web', 'page');
const text = (...path) => readFileSync(join(root, ...path), 'utf8');
const scripts = readdirSync(page).filter((name) => name.endsWith('.js'));

test('every word of the page is there in Spanish', () => {
  const ts = ['oaklight_es.ts', 'oaklight_words_es.ts'].map((name) => text('mobile', 'i18n', name));
  const own = JSON.parse(text('mobile', 'web', 'page', 'es.json'));
  const words = spanishOf(ts, own);
  const used = new Set();
  const missing = [];
  for (const name of scripts) {
    for (const [, context, , source] of text('mobile', 'web', 'page', name).matchAll(
      /\bt\(\s*'(\w+)',\s*(['"])((?:(?!\2).)*)\2/g,
    )) {
      used.add(`${context}|${source}`);
      if (!words[context]?.[source]) missing.push(`${name}: ${context}|${source}`);
    }
  }
  // What core's side of the page says in words of its own.
  const bridge = join(root, 'mobile', 'web', 'bridge');
  for (const name of readdirSync(bridge).filter((one) => one.endsWith('.cpp'))) {
    for (const [, words] of text('mobile', 'web', 'bridge', name).matchAll(/(?:phrase|counted)\(\s*"Web",([\s\S]*?)\);/g)) {
      for (const [, source] of words.matchAll(/"([^"]+)"/g)) {
        used.add(`Web|${source}`);
        if (!own.Web[source]) missing.push(`${name}: Web|${source}`);
      }
    }
  }
  assert.deepEqual(missing, []);
  assert.ok(used.size > 100, 'the search for words found too few to mean anything');
  const dead = Object.keys(words.Web).filter((source) => !used.has(`Web|${source}`));
  assert.deepEqual(dead, [], 'es.json has words that the page does not say');
});

test('the page reckons nowhere but with pixels in room.js', () => {
  for (const name of scripts.filter((one) => one !== 'room.js')) {
    const code = text('mobile', 'web', 'page', name)
      .replace(/\/\/.*$/gm, '')
      .replace(/\/(?![*\s])(?:[^/\n\\]|\\.)+\/[gimsuy]*/g, '') // patterns
      .replace(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/g, "''");
    assert.doesNotMatch(code, /\bMath\.|parseFloat|parseInt|toFixed|[\w)\]] [*/%] [\w(]/, name);
  }
});

test('the page names no address but its own', () => {
  for (const name of [...scripts, 'index.html', 'style.css', 'controls.css', 'tally.css', 'lists.css', 'manifest.webmanifest']) {
    const found = text('mobile', 'web', 'page', name).match(/https?:\/\/(?!www\.w3\.org\/2000\/svg)[^\s'"]+/g) ?? [];
    assert.deepEqual(found, [], name);
  }
});

test('a colour table that changed its shape is not taken for none', async () => {
  const { coloursCss } = await import('../page/from_app.mjs');
  const theme = text('mobile', 'look', 'theme.cpp');
  assert.match(coloursCss(theme), /\[data-light='night'\] \{\n {2}--ground: #131310;/);
  assert.throws(() => coloursCss(theme.replace('0xfffaf7f0, ', '')), /theme\.cpp/);
});
