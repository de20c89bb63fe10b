// Words in the language of the person. A text of core is a string, or a phrase {c: context, s: source, a: arguments}.

let spanish = {};
let language = 'en';

export async function setLanguage(chosen) {
  if (chosen === 'es') spanish = await (await fetch('words_es.json')).json();
  language = chosen;
  document.documentElement.lang = chosen;
}

function fill(text, args) {
  // Of one or of many: the first argument is the number.
  const form = Array.isArray(text) ? text[String(args[0]) === '1' ? 0 : 1] : text;
  return neat(form)
    .replace(/%(\d)/g, (_, n) => say(args[n - 1] ?? ''))
    .replace(/%n/g, () => say(args[0] ?? ''));
}

/// A word of the page: `context` is where the app has it, "Web" where only this page does.
export function t(context, source, ...args) {
  const found = language === 'es' ? spanish[context]?.[source] : undefined;
  return fill(found ?? source, args);
}

const kSquare = /\b(ft|m)2\b/g;
const kUnit = /(\d) (?=(?:in|cm|ft|ft²|m²|%)(?![\p{L}\d]))/gu;

/// Squares as the app writes them, and a number on one line with its unit.
const neat = (text) => text.replace(kSquare, '$1²').replace(kUnit, '$1\u00a0');

/// A text of core as one reads it; "" for null.
export function say(text) {
  if (text === null || text === undefined) return '';
  if (Array.isArray(text.l)) return text.l.map(say).join(text.j ?? ' ');
  return typeof text === 'object' ? t(text.c, text.s, ...(text.a ?? [])) : neat(String(text));
}

/// What went wrong and how to mend it, as one reads it.
export function sentence(error) {
  const what = say(error.what ?? error.message);
  return error.fix ? `${what} ${say(error.fix)}` : what;
}
