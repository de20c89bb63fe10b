// What the page takes from the tablet app's own files while it is put together: colours and Spanish.

const kLights = ['day', 'bright', 'night'];

/// The table of mobile/look/theme.cpp as custom properties, one set for each light.
export function coloursCss(theme) {
  const names = theme.match(/struct Theme::Colours \{\s*QRgb ([^;]+);/)?.[1].split(/,\s*/);
  const rows = [...theme.matchAll(/Colours\{((?:0xff[0-9a-f]{6},?\s*)+)\}/g)].map((row) => row[1].split(/,\s*/));
  if (!names || rows.length !== kLights.length || rows.some((row) => row.length !== names.length)) {
    throw new Error('mobile/look/theme.cpp no longer has its table of colours where assemble looks for it');
  }
  const rule = (light, row) => {
    const lines = names.map((name, i) => `  --${name.replace('_', '-')}: #${row[i].trim().slice(4)};`);
    return `[data-light='${light}'] {\n${lines.join('\n')}\n}\n`;
  };
  return kLights.map((light, i) => rule(light, rows[i])).join('');
}

const kEntities = { lt: '<', gt: '>', quot: '"', apos: "'", amp: '&' };
const plain = (xml) =>
  xml.replace(/&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/gi, (_, hex, decimal, name) =>
    hex ? String.fromCodePoint(parseInt(hex, 16)) : decimal ? String.fromCodePoint(Number(decimal)) : kEntities[name],
  );

/// {context: {English: Spanish}} from the app's translation files and the page's own.
export function spanishOf(tsFiles, own) {
  const words = { ...own };
  for (const ts of tsFiles) {
    for (const [, context] of ts.matchAll(/<context>([\s\S]*?)<\/context>/g)) {
      const name = plain(context.match(/<name>([\s\S]*?)<\/name>/)[1]);
      words[name] ??= {};
      for (const [, message] of context.matchAll(/<message[^>]*>([\s\S]*?)<\/message>/g)) {
        const source = message.match(/<source>([\s\S]*?)<\/source>/);
        const translation = message.match(/<translation>([\s\S]*?)<\/translation>/);
        if (!source || !translation) continue;
        const forms = [...translation[1].matchAll(/<numerusform>([\s\S]*?)<\/numerusform>/g)].map((form) => plain(form[1]));
        words[name][plain(source[1])] = forms.length > 0 ? forms : plain(translation[1]);
      }
    }
  }
  return words;
}
