// The tract file that was taken out, read by programs that had no part in writing it: the desk's own command and sqlite3.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from './site.mjs';

export const oaklight = process.env.OAKLIGHT ?? join(root, '.build', 'main', 'bin', 'oaklight');
export const noNative = existsSync(oaklight) ? false : `no ${oaklight}: build it first (ninja -C .build/main oaklight)`;

export const run = (...given) => execFileSync(oaklight, given, { encoding: 'utf8', cwd: root });
export const estimate = (file) => JSON.parse(run('estimate', file, '--json'));

export const rows = (file, sql) =>
  execFileSync('sqlite3', ['-separator', ' | ', file, sql], { encoding: 'utf8' }).trim().split('\n').filter(Boolean);

/// What is decided for the trees of a stand: tag, verdict, what to do, and why.
export const marks = (file, stand) =>
  rows(
    file,
    `SELECT w.tag, m.verdict, m.method, m.product, m.destination, m.by_hand, m.reason, m.rules FROM mark m
     JOIN walk_tree w ON w.uid = m.walk_tree_uid JOIN stand s ON s.uid = w.stand_uid
     WHERE s.name = '${stand}' AND NOT m.deleted AND NOT w.deleted ORDER BY w.tag;`,
  );

/// A tract file that the desk made of the demo's own files, decided or not.
export function nativeDemo(decided) {
  const file = join(mkdtempSync(join(tmpdir(), 'oaklight-native-')), 'hollow.gpkg');
  run('import', file, 'demo_plots');
  if (decided) run('recommend', file);
  return file;
}

/// Trees in use as [plot, species, tenths], in the order in which they were tallied.
export function trees(file) {
  const sql =
    'SELECT p.label, t.species_fia, t.dbh_tenths FROM tree t JOIN plot p ON p.uid = t.plot_uid WHERE NOT t.deleted ORDER BY t.uid;';
  return rows(file, sql).map((row) => row.replaceAll(' | ', ' '));
}

/// Takes the open tract out through the page, as a person does, and answers where the download lies.
export async function takeOut(page, hand) {
  const coming = page.waitForEvent('download');
  await hand.tap(page.getByRole('button', { name: 'Take the file out' }));
  const download = await coming;
  const path = join(mkdtempSync(join(tmpdir(), 'oaklight-out-')), download.suggestedFilename());
  await download.saveAs(path);
  return path;
}
