// Tract files: into the browser, out of it, and which one is open.
import { el, problem, tap, words } from './parts.js';
import { openSheet } from './sheet.js';
import { sentence, t } from './words.js';

/// A file of the device goes in whole and checked; one that is refused changes nothing.
export function putIn(shell, done) {
  const input = el('input', {
    type: 'file',
    accept: '.gpkg,application/geopackage+sqlite3',
    'aria-label': t('Web', 'Put a file in'),
  });
  input.addEventListener('change', async () => {
    const [file] = input.files;
    if (!file) return;
    try {
      const kept = await shell.core.putIn(file, file.name);
      await openTract(shell, kept.file ?? file.name);
    } catch (error) {
      shell.refuse(sentence(error));
    }
    await done();
  });
  input.click();
}

/// A compact, checked copy of the open tract goes where the person says.
export async function takeOut(shell) {
  let copy;
  try {
    copy = await shell.core.takeOut();
  } catch (error) {
    shell.refuse(sentence(error));
    return;
  }
  handOut(copy);
}

function handOut({ name, blob }) {
  const link = el('a', { href: URL.createObjectURL(blob), download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/// A file that does not open, byte by byte with what SQLite keeps beside it: the desk's `oaklight rescue` reads what can be read.
async function takeOutAsIs(shell, file) {
  try {
    for (const one of await shell.core.takeOutAsIs(file)) handOut(one);
  } catch (error) {
    shell.refuse(sentence(error));
  }
}

export async function openTract(shell, file) {
  if (await shell.takeTract('open', { file })) return;
  shell.refuse(`${shell.why} ${t('Web', 'Under Setup, Tract files, it can be taken out as it is for oaklight rescue.')}`);
}

export async function openFiles(shell, done) {
  let { files } = await shell.ask('files');
  const ofTract = (one, sheet) =>
    el(
      'div.file-row',
      {},
      tap({
        text: one.file,
        on: one.file === shell.tract?.file,
        act: async () => {
          sheet.close();
          await openTract(shell, one.file);
          await done();
        },
      }),
      one.file === shell.tract?.file
        ? null
        : [
            tap({
              text: t('Web', 'Take out as it is'),
              spoken: t('Web', 'Take %1 out as it is', one.file),
              help: t('Web', 'For a file that does not open: oaklight rescue reads what can be read'),
              act: () => takeOutAsIs(shell, one.file),
            }),
            tap({
              text: t('Web', 'Throw away'),
              spoken: t('Web', 'Throw away %1', one.file),
              act: () => openRemove(shell, one.file, async () => reload(sheet)),
            }),
          ],
    );
  async function reload(sheet) {
    ({ files } = await shell.ask('files'));
    sheet.refill();
  }
  openSheet({
    title: t('FilesSheet', 'Tract files'),
    fill: (sheet) =>
      files.length > 0 ? files.map((one) => ofTract(one, sheet)) : words(t('Web', 'No tract file is kept here yet.')),
  });
}

/// What undo cannot bring back is asked for, and by typing: a glove that slips does not type a name.
function openRemove(shell, file, done) {
  const typed = el('input', {
    type: 'text',
    'aria-label': t('Web', 'Name of the file'),
    autocomplete: 'off',
    autocapitalize: 'off',
    oninput: () => sheet.refoot(),
  });
  const told = el('div', {});
  const sheet = openSheet({
    title: t('Web', 'Throw away %1', file),
    fill: () => [
      told,
      words(t('Web', 'The file leaves this browser for good. A copy that was taken out stays where it is.')),
      el('label', {}, t('Web', 'To throw it away, type its name: %1', file), typed),
    ],
    foot: (own) =>
      tap({
        text: t('Web', 'Throw away'),
        look: 'large',
        enabled: typed.value.trim() === file,
        act: async () => {
          const gone = await shell.act('remove', { file });
          if (!gone) return told.replaceChildren(problem(shell.why));
          own.close();
          await done();
        },
      }),
  });
}
