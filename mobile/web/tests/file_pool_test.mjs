// The pool of files holds names and bytes over ends of every kind.
import assert from 'node:assert/strict';
import { test } from 'node:test';

import { FilePool } from '../files/file_pool.mjs';
import { chanceOf, CutDisk, PowerCut } from './cut_disk.mjs';

const text = (words) => new TextEncoder().encode(words);
const content = (pool, name) => {
  const file = pool.get(name);
  if (!file) return null;
  const bytes = new Uint8Array(file.size());
  file.read(bytes, 0);
  return new TextDecoder().decode(bytes);
};
const disk_with = (count, seed = 1) => {
  const disk = new CutDisk(chanceOf(seed));
  for (let i = 0; i < count; ++i) disk.add();
  return disk;
};
const put = (pool, name, words) => {
  const file = pool.get(name) ?? pool.make(name);
  file.resize(0);
  file.write(text(words), 0);
  file.sync();
  return file;
};

test('a file has its name and bytes again after the pool was opened anew', () => {
  const disk = disk_with(4);
  put(new FilePool(disk.files), 'woods.gpkg', 'oak');
  const again = new FilePool(disk.files);
  assert.deepEqual(again.names, ['woods.gpkg']);
  assert.equal(content(again, 'woods.gpkg'), 'oak');
  assert.equal(again.spare, 3);
});

test('a removed file is gone, its room is free and empty', () => {
  const disk = disk_with(2);
  const pool = new FilePool(disk.files);
  put(pool, 'a', 'first');
  assert.equal(pool.remove('a'), true);
  assert.equal(pool.remove('a'), false);
  assert.equal(pool.spare, 2);
  assert.equal(content(pool, 'a'), null);
  assert.equal(pool.make('b').size(), 0);
});

test('who has a removed file open keeps its bytes until it is closed', () => {
  const pool = new FilePool(disk_with(2).files);
  const file = put(pool, 'a', 'first');
  pool.opened(file);
  pool.remove('a');
  assert.equal(file.size(), 5);
  assert.equal(pool.spare, 1);
  pool.closed(file);
  assert.equal(pool.spare, 2);
  assert.equal(file.size(), 0);
});

test('a rename takes the place of the file that had the name', () => {
  const disk = disk_with(3);
  const pool = new FilePool(disk.files);
  put(pool, 'old', 'old');
  put(pool, 'new', 'new');
  pool.rename('new', 'old');
  for (const seen of [pool, new FilePool(disk.files)]) {
    assert.deepEqual(seen.names, ['old']);
    assert.equal(content(seen, 'old'), 'new');
    assert.equal(seen.spare, 2);
  }
});

test('without a free file none is made, and nothing changes', () => {
  const pool = new FilePool(disk_with(1).files);
  put(pool, 'a', 'a');
  assert.equal(pool.make('b'), undefined);
  assert.deepEqual(pool.names, ['a']);
});

test('a name too long is refused, and its file stays free', () => {
  const pool = new FilePool(disk_with(1).files);
  assert.throws(() => pool.make('x'.repeat(401)), RangeError);
  assert.equal(pool.spare, 1);
});

/** Steps of which each is either done or not done, whenever the power goes. */
const works = {
  make: [(pool) => put(pool, 'b', 'bee'), { a: 'ay', b: 'bee' }],
  rename: [(pool) => pool.rename('a', 'c'), { c: 'ay' }],
  remove: [(pool) => pool.remove('a'), {}],
};
for (const [name, [work, after]] of Object.entries(works)) {
  test(`power cut at every call while files change: ${name}`, () => {
    let cuts = 0;
    for (let seed = 1; seed <= 40; ++seed) {
      for (let at = 1; ; ++at) {
        const disk = disk_with(3, seed * 1000 + at);
        put(new FilePool(disk.files), 'a', 'ay');
        const pool = new FilePool(disk.files);
        disk.calls = 0;
        disk.cutAt = at;
        let done = true;
        try {
          work(pool);
        } catch (problem) {
          if (!(problem instanceof PowerCut)) throw problem;
          done = false;
          ++cuts;
        }
        disk.cut();
        const found = new FilePool(disk.files);
        const files = Object.fromEntries(found.names.map((file) => [file, content(found, file)]));
        const before = JSON.stringify({ a: 'ay' });
        if (done) assert.deepEqual(files, after, `seed ${seed}, all ${at - 1} calls`);
        else if (name === 'make' && 'b' in files)
          assert.equal(files.a, 'ay'); // its bytes were not flushed yet
        else assert.ok([before, JSON.stringify(after)].includes(JSON.stringify(files)), `seed ${seed}, call ${at}`);
        assert.equal(found.names.length + found.spare, 3);
        if (done) break;
      }
    }
    assert.ok(cuts >= 40);
  });
}
