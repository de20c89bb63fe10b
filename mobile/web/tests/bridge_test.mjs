// The program of the page under node: the calls that a day makes, over files that lose power, fill up and come from
// others. It needs .build/web/bin/oaklight.wasm; what the native program says of a file it is asked too, where it is built.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { webcrypto } from 'node:crypto';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { test } from 'node:test';

import { CoreError, Engine } from '../files/engine.mjs';
import { FilePool } from '../files/file_pool.mjs';
import { Exit } from '../files/wasi.mjs';
import { chanceOf, CutDisk } from './cut_disk.mjs';

globalThis.crypto ??= webcrypto; // node 18 has it under this name only
const root = path.resolve(import.meta.dirname ?? path.dirname(new URL(import.meta.url).pathname), '../../..');
const program = new WebAssembly.Module(fs.readFileSync(path.join(root, '.build/web/bin/oaklight.wasm')));
const native = path.join(root, '.build/main/bin/oaklight');
const kFiles = 14;

function fresh(seed = 1) {
  const disk = new CutDisk(chanceOf(seed));
  for (let i = 0; i < kFiles; ++i) disk.add();
  return { disk, engine: new Engine(program, new FilePool(disk.files), { print: () => {} }) };
}
const refuses = (work, code) => assert.throws(work, (problem) => problem instanceof CoreError && problem.code === code);
const white_oak = 802;

/** A tract with one stand and planned plots. */
function planned(engine, plots = 3) {
  engine.call({ call: 'create', file: 'woods.gpkg' });
  engine.call({ call: 'setTract', name: 'Cove', state: 'WV' });
  const { stand } = engine.call({ call: 'addStand', name: 'Upper', acres: 12.5 });
  const { cruise } = engine.call({ call: 'addCruise', name: 'Fall', design: { baf: 10 } });
  engine.call({ call: 'addPlots', stand, cruise, count: plots });
  return { stand, plots: engine.call({ call: 'plots' }).plots.map((plot) => plot.id) };
}

/** Runs the native program on the bytes of a tract file; null where it is not built. */
function ask_native(bytes, ...words) {
  if (!fs.existsSync(native)) return null;
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'oaklight-web-'));
  try {
    const file = path.join(folder, 'out.gpkg');
    fs.writeFileSync(file, bytes);
    return execFileSync(
      native,
      words.map((word) => (word === 'FILE' ? file : word)),
      { encoding: 'utf8' },
    );
  } finally {
    fs.rmSync(folder, { recursive: true });
  }
}

test('a tract is made, tallied, undone and done again, and is there after a reload', () => {
  const { disk, engine } = fresh();
  const { plots } = planned(engine);
  const first = engine.call({ call: 'tally', plot: plots[0], species: white_oak, tenths: 140 });
  assert.deepEqual(first.reading, { c: 'TallyViewModel', s: '%1 %2', a: [{ c: 'Species', s: 'white oak' }, '14.0 in'] });
  assert.equal(first.figures.ba, '10.0 ft²/ac'); // By hand: one tree of a point of factor 10
  assert.equal(engine.call({ call: 'again', plot: plots[0] }).figures.stems, '2');
  assert.match(engine.call({ call: 'undo' }).did, /^tally white oak 14\.0 in$/);
  assert.equal(engine.call({ call: 'plot', plot: plots[0] }).count, 1);
  engine.call({ call: 'redo' });

  const later = new Engine(program, new FilePool(disk.files), { print: () => {} });
  assert.equal(later.call({ call: 'open', file: 'woods.gpkg' }).name, 'Cove');
  assert.equal(later.call({ call: 'plot', plot: plots[0] }).count, 2);
  assert.equal(later.call({ call: 'undo' }).did, 'tally white oak 14.0 in');
});

test('an area in hectares is the same ground in acres', () => {
  const { engine } = fresh();
  engine.call({ call: 'create', file: 'woods.gpkg' });
  const { stand } = engine.call({ call: 'addStand', name: 'Upper', hectares: 5 });
  const area = (system) => engine.call({ call: 'tract', system }).stands[0].area;
  assert.equal(area('metric'), '5.00 ha');
  assert.equal(area('us'), '12.4 ac'); // By hand: 5 ha x 2.4711 ac
  engine.call({ call: 'changeStand', stand, walkedHectares: 2 });
  refuses(() => engine.call({ call: 'changeStand', stand, walkedHectares: 20 }), 'contradiction');
  refuses(() => engine.call({ call: 'changeStand', stand, walkedHectares: '' }), 'not_a_number'); // as a person typed it
  engine.call({ call: 'changeStand', stand, hectares: '4.5' });
  assert.equal(area('metric'), '4.50 ha');
});

test('what is wrong is refused by name and changes nothing', () => {
  const { engine } = fresh();
  refuses(() => engine.call({ call: 'tract' }), 'no_data');
  refuses(() => engine.call({ call: 'felling' }), 'not_a_choice');
  refuses(() => engine.call({ call: 'create', file: '../woods.gpkg' }), 'not_a_choice');
  const { plots } = planned(engine);
  refuses(() => engine.call({ call: 'tally', plot: plots[0], species: 1, tenths: 140 }), 'unknown_species');
  refuses(() => engine.call({ call: 'tally', plot: plots[0], species: white_oak, tenths: 99999 }), 'out_of_range');
  refuses(() => engine.call({ call: 'tally', plot: plots[0], species: white_oak }), 'missing_value');
  refuses(() => engine.call({ call: 'tally', plot: 'nowhere', species: white_oak, tenths: 140 }), 'not_a_choice');
  refuses(() => engine.call({ call: 'create', file: 'woods.gpkg' }), 'cannot_write');
  engine.call({ call: 'open', file: 'woods.gpkg' });
  assert.equal(engine.call({ call: 'plot', plot: plots[0] }).count, 0);
});

/** Each phrase of an answer, wherever it stands. */
function* phrases(answer) {
  if (answer === null || typeof answer !== 'object') return;
  if (typeof answer.c === 'string' && typeof answer.s === 'string') yield answer;
  for (const inside of Object.values(answer)) yield* phrases(inside);
}
/** The sources of a file of translations, "context\0source". */
function sources(file) {
  const plain = (xml) =>
    xml
      .replace(/&#xa0;/g, '\u00a0')
      .replace(/&quot;/g, '"')
      .replace(/&apos;/g, "'")
      .replace(/&lt;/g, '<')
      .replace(/&gt;/g, '>')
      .replace(/&amp;/g, '&');
  const xml = fs.readFileSync(path.join(root, 'mobile/i18n', file), 'utf8');
  return [...xml.matchAll(/<context>([\s\S]*?)<\/context>/g)].flatMap(([, context]) => {
    const name = /<name>(.*?)<\/name>/.exec(context)[1];
    return [...context.matchAll(/<source>([\s\S]*?)<\/source>/g)].map(([, source]) => `${name}\0${plain(source)}`);
  });
}

test('the demo tract is decided, its list has cautions first, and what the app says in Spanish so can the page', () => {
  const { engine } = fresh();
  const seen = [];
  const call = (name, given = {}) => {
    const answer = engine.call({ ...given, call: name });
    seen.push(answer);
    return answer;
  };
  const tract = call('create', { file: 'demo.gpkg', demo: true });
  assert.equal(tract.demo, true);
  for (const plot of call('plots').plots) call('plot', { plot: plot.id, set: '' });
  for (const { id: stand } of tract.stands) {
    const figures = call('standFigures', { stand });
    assert.ok(figures.problem !== null || figures.figures.length > 5);
    const light = call('light', { stand });
    if (light.cards.length === 0) continue;
    call('decide', { stand });
    for (const { crop } of call('light', { stand }).cards) {
      const card = call('card', { crop });
      assert.equal(card.trees[0].contact, null);
      assert.equal(card.sides.length, 4);
    }
  }
  for (const verdict of ['take', 'keep', 'kill_standing', 'look_again']) call('reasons', { verdict });
  call('walkTree', { stand: tract.stands[0].id }); // the words of the form for how a crown stands, and what is seen
  const marks = call('marks', { most: 1000 });
  assert.ok(marks.rows.length > 10);
  assert.ok(
    marks.rows.some((row) => row.stop),
    'the demo has a tree with a STOP',
  );
  for (const row of marks.rows) {
    const order = row.cautions.map((caution) => ['stop', 'extra_care', 'note'].indexOf(caution.severity));
    assert.deepEqual(
      order,
      [...order].sort((a, b) => a - b),
      row.tag,
    );
    call('mark', { tree: row.tree });
  }
  assert.equal(call('marks', { from: 3, most: 2 }).rows[0].tag, marks.rows[3].tag);

  const known = new Set([...sources('oaklight_es.ts'), ...sources('oaklight_words_es.ts')]);
  const unsaid = new Set();
  // "Web" is the page's own. Units and the table of sources are English in the app too.
  for (const { c, s } of phrases(seen)) {
    if (!['Web', 'Units', 'Sources'].includes(c) && !known.has(`${c}\0${s}`)) unsaid.add(`${c}: ${s}`);
  }
  assert.deepEqual([...unsaid], []);

  const { bytes } = engine.takeOut();
  const checked = ask_native(bytes, 'check', 'FILE');
  if (checked === null) return console.log('# no native program in .build/main: the file was not shown to it');
  const estimate = JSON.parse(ask_native(bytes, 'estimate', 'FILE', '--json'));
  assert.equal(estimate.stands.length, tract.stands.length);
});

test('a tree is put right and taken out', () => {
  const { engine } = fresh();
  const { plots } = planned(engine);
  const { tree } = engine.call({ call: 'tally', plot: plots[0], species: white_oak, tenths: 140 });
  const right = engine.call({
    call: 'correctTree',
    tree,
    facts: { tenths: 152, status: 'dead', conditions: ['den', 'conk'], crown_class: 'codominant', live_crown: null },
  });
  assert.equal(right.facts.tenths, 152);
  assert.deepEqual(right.facts.conditions, ['den', 'conk']);
  assert.equal(right.choices.status.find((choice) => choice.on).word, 'dead');
  refuses(() => engine.call({ call: 'correctTree', tree, facts: { conditions: ['wings'] } }), 'not_a_choice');
  assert.equal(engine.call({ call: 'tree', tree }).facts.tenths, 152);
  assert.equal(engine.call({ call: 'removeTree', tree }).count, 0);
  refuses(() => engine.call({ call: 'tree', tree }), 'unknown_reference');
});

test('a tree of the walk keeps its unit, and that it is dead', () => {
  const { engine } = fresh();
  const { stand } = planned(engine);
  const oak = { species: white_oak, tenths: 350, conditions: [] };
  const dead = (tree) => engine.call({ call: 'walkTree', ...tree }).choices.condition[0];
  assert.deepEqual([dead({ stand }).word, dead({ stand }).on], ['dead', false]);
  const { crop } = engine.call({ call: 'saveWalkTree', system: 'metric', stand, tag: '1', facts: oak });
  assert.equal(engine.call({ call: 'walkTree', tree: crop }).dbh, '35.0 cm');
  engine.call({ call: 'saveWalkTree', tree: crop, tag: '1', facts: { ...oak, system: 'metric', status: 'dead' } });
  assert.equal(dead({ tree: crop }).on, true);
  assert.equal(engine.call({ call: 'walkTree', tree: crop }).dbh, '35.0 cm');
});

test('a file that is refused leaves the one that is open, and without room for all of the demo there is none of it', () => {
  const { disk, engine } = fresh();
  planned(engine);
  refuses(() => engine.call({ call: 'open', file: 'nowhere.gpkg' }), 'cannot_open');
  refuses(() => engine.call({ call: 'create', file: 'woods.gpkg' }), 'cannot_write');
  for (const room of [100_000, 460_000, 600_000]) {
    disk.room = disk.used + room; // less than the copy, less than its first page, less than its trees
    refuses(() => engine.call({ call: 'create', file: 'demo.gpkg', demo: true }), 'disk_full');
    const { files, open } = engine.call({ call: 'files' });
    assert.deepEqual([files.map((one) => one.file), open], [['woods.gpkg'], 'woods.gpkg']);
    assert.ok(!engine.pool.names.some((name) => name.startsWith('demo')), String(engine.pool.names));
  }
});

test('a tract goes out and comes in as the same file, and nothing that is not sound stays', () => {
  const { engine } = fresh();
  const { plots } = planned(engine);
  engine.call({ call: 'tally', plot: plots[0], species: white_oak, tenths: 140 });
  const { name, bytes } = engine.takeOut();
  assert.equal(name, 'woods.gpkg');
  assert.equal(new TextDecoder().decode(bytes.subarray(0, 15)), 'SQLite format 3');

  const other = fresh(2).engine;
  assert.deepEqual(
    other.putIn(bytes, 'came.gpkg').files.map((file) => file.file),
    ['came.gpkg'],
  );
  other.call({ call: 'open', file: 'came.gpkg' });
  assert.equal(other.call({ call: 'plot', plot: plots[0] }).count, 1);
  refuses(() => other.putIn(bytes, 'came.gpkg'), 'cannot_write');
  refuses(() => other.putIn(bytes, 'came.txt'), 'not_a_choice');
  refuses(() => other.putIn(new TextEncoder().encode('no tract at all'), 'b.gpkg'), 'not_a_tract_file');
  const bad = bytes.slice();
  bad.fill(0x5a, 40960, 49152);
  refuses(() => other.putIn(bad, 'b.gpkg'), 'damaged');
  assert.deepEqual(other.call({ call: 'files' }), { files: [{ file: 'came.gpkg', bytes: bytes.length }], open: 'came.gpkg' });
  assert.deepEqual(
    other.pool.names.filter((file) => file.startsWith('tmp/')),
    [],
  );
});

test('a file that is damaged in the browser is not opened, and can be taken out as it lies there', () => {
  const { engine } = fresh();
  const { plots } = planned(engine);
  engine.call({ call: 'tally', plot: plots[0], species: white_oak, tenths: 140 });
  engine.call({ call: 'close' });
  engine.pool.get('woods.gpkg').write(new Uint8Array(8192).fill(0x5a), 40960);
  refuses(() => engine.call({ call: 'open', file: 'woods.gpkg' }), 'damaged');
  const files = engine.takeOutAsIs('woods.gpkg');
  assert.equal(files[0].name, 'woods.gpkg');
  assert.equal(files[0].bytes.length, engine.pool.get('woods.gpkg').size());
  assert.equal(files[0].bytes[40960], 0x5a);
  assert.deepEqual(engine.takeOutAsIs('nowhere.gpkg'), []);
});

test('without room a tree is refused as such, nothing is lost, and with room it goes on', () => {
  const { disk, engine } = fresh();
  const { plots } = planned(engine);
  const tally = () => engine.call({ call: 'tally', plot: plots[0], species: white_oak, tenths: 140 });
  tally();
  disk.room = disk.used + 40000;
  let trees = 1;
  let full = null;
  while (full === null && trees < 1000) {
    try {
      tally();
      ++trees;
    } catch (problem) {
      full = problem;
    }
  }
  assert.equal(full?.code, 'disk_full');
  assert.equal(engine.call({ call: 'plot', plot: plots[0] }).count, trees);
  refuses(tally, 'disk_full');
  disk.room = Infinity;
  assert.equal(tally().count, trees + 1);
  const later = new Engine(program, new FilePool(disk.files), { print: () => {} });
  later.call({ call: 'open', file: 'woods.gpkg' });
  assert.equal(later.call({ call: 'plot', plot: plots[0] }).count, trees + 1);
});

test('what was acknowledged survives power cuts while trees are tallied, undone and the file is made', () => {
  const cuts = Number(process.env.OAKLIGHT_CUTS ?? 25);
  for (let seed = 1; seed <= cuts; ++seed) {
    const chance = chanceOf(seed);
    const { disk, engine } = fresh(seed);
    const { plots } = planned(engine);
    let acknowledged = 0;
    let asked = 0;
    disk.calls = 0;
    disk.cutAt = 1 + Math.floor(chance() * 120);
    try {
      for (;;) {
        const undo = acknowledged > 2 && chance() < 0.2;
        asked = acknowledged + (undo ? -1 : 1);
        if (undo) engine.call({ call: 'undo' });
        else engine.call({ call: 'tally', plot: plots[0], species: white_oak, tenths: 100 + seed });
        acknowledged = asked;
      }
    } catch (problem) {
      assert.ok(disk.calls >= disk.cutAt, `${problem?.stack}`);
    }
    disk.cut();
    const later = new Engine(program, new FilePool(disk.files), { print: () => {} });
    later.call({ call: 'open', file: 'woods.gpkg' }); // checks every record
    const { count } = later.call({ call: 'plot', plot: plots[0] });
    assert.ok([acknowledged, asked].includes(count), `seed ${seed}: ${acknowledged} acknowledged, ${count} there`);
    later.call({ call: 'tally', plot: plots[0], species: white_oak, tenths: 140 });
  }
});

test('a fault of the program itself is told, and the next call finds the tract as it is on disk', () => {
  const { disk } = fresh();
  let fault = false;
  const engine = new Engine(program, new FilePool(disk.files), {
    print: () => {},
    now: () => {
      if (!fault) return Date.now();
      fault = false;
      throw new Exit(1);
    },
  });
  const { plots } = planned(engine);
  const tally = () => engine.call({ call: 'tally', plot: plots[0], species: white_oak, tenths: 140 });
  tally();
  fault = true;
  refuses(tally, 'lost');
  assert.equal(fault, false);
  assert.equal(tally().count, 2);
});
