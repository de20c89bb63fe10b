// A sheet of paper laid over the page. It closes by its own button, by the back key, or by a tap beside it.
import { el, fitAll, tap } from './parts.js';
import { t } from './words.js';

/// under  stands under the title, beside the button that closes
/// fill(sheet)  gives the children of its body; sheet.refill() asks again; sheet.close() puts it away.
export function openSheet({ title, under = [], fill, foot, whole = false, atTree = false, closed }) {
  const head = el('h2', {});
  const body = el('div.body', {});
  const below = el('div.foot', {});
  const dialog = el(`dialog.sheet${whole ? '.whole' : ''}`, {});
  const sheet = {
    dialog,
    body,
    close: () => dialog.close(),
    refill() {
      head.textContent = typeof title === 'function' ? title() : title;
      dialog.setAttribute('aria-label', head.textContent);
      const from = body.scrollTop;
      const focused = document.activeElement;
      body.replaceChildren(...[fill(sheet)].flat(3).filter(Boolean));
      body.scrollTop = from;
      if (body.contains(focused)) focused.focus(); // a line that is typed in goes on being typed in
      sheet.refoot();
      fitAll(body);
    },
    refoot() {
      below.replaceChildren(...[foot?.(sheet)].flat(2).filter(Boolean));
      fitAll(below);
    },
  };
  const close = tap({ text: t('Sheet', 'Close'), look: atTree ? '' : 'small', act: () => dialog.close() });
  dialog.append(el('div.head', {}, el('div.words', {}, head, under), close), body, below);
  dialog.addEventListener('pointerdown', (event) => {
    if (event.target === dialog) dialog.close(); // what lies behind the paper is the dialog itself
  });
  dialog.addEventListener('close', () => {
    dialog.remove();
    closed?.();
  });
  document.body.append(dialog);
  sheet.refill();
  dialog.showModal();
  fitAll(dialog);
  return sheet;
}

export function closeSheets() {
  for (const dialog of document.querySelectorAll('dialog.sheet')) dialog.close();
}

/// One of a few names.
export function openChoice({ title, options, act }) {
  return openSheet({
    title,
    fill: (sheet) =>
      options.map((one) =>
        tap({
          ...one,
          act: () => {
            sheet.close();
            act(one);
          },
        }),
      ),
  });
}

const kMostDigits = 4;

/// Digits in three rows of three with zero below in the middle. There is no decimal key: digits fill a field of a fixed form,
/// so that a slip is never a factor of ten. read(digits) answers how they read; entered(digits) answers a problem, or "" when
/// they are taken over.
export function openKeypad({ title, note, prompt, enterText, corner, read, entered }) {
  let digits = '';
  let told = '';
  const headline = el('p.headline', { 'aria-live': 'polite' });
  const subline = el('p.soft.one-line', {});
  const enter = tap({ text: enterText, look: 'main large', atTree: true, act: () => take() });
  const erase = tap({ text: t('KeyPad', 'Delete digit'), atTree: true, act: () => show(digits.slice(0, -1)) });

  async function show(now) {
    digits = now;
    told = '';
    enter.disabled = erase.disabled = digits === '';
    const reading = digits === '' ? (prompt ?? t('KeypadSheet', 'Type the diameter')) : await read(digits);
    if (digits === now) headline.textContent = reading;
    subline.textContent = told || note || '';
  }
  function type(digit) {
    if (digits.length < kMostDigits) show(digits + digit);
  }
  async function take() {
    enter.disabled = true; // until it is stored, or refused
    told = await entered(digits);
    if (!told) return sheet.close();
    enter.disabled = false;
    subline.textContent = told;
  }
  const key = (digit) => tap({ text: digit, look: 'digit', atTree: true, act: () => type(digit) });
  const sheet = openSheet({
    title,
    atTree: true,
    whole: true,
    under: [headline, subline],
    fill: () => [
      el(
        'div.keypad',
        {},
        el(
          'div.keys',
          {},
          [...'123456789'].map(key),
          corner ? tap({ ...corner, atTree: true, act: () => corner.act(sheet) }) : el('span', {}),
          key('0'),
          erase,
        ),
        enter,
      ),
    ],
  });
  sheet.dialog.addEventListener('keydown', (event) => {
    if (event.key.length === 1 && event.key >= '0' && event.key <= '9') type(event.key);
    else if (event.key === 'Backspace') show(digits.slice(0, -1));
    else if (event.key === 'Enter' && digits !== '' && event.target !== enter) take();
    else return;
    event.preventDefault();
  });
  show('');
  return sheet;
}
