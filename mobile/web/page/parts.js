// The few parts that all screens are made of.

/// An element: el('p.soft', {id: 'x', onclick}, 'text', other). Null and false children are left out.
export function el(kind, props = {}, ...children) {
  const [tag, ...classes] = kind.split('.');
  const made = document.createElement(tag);
  if (classes.length > 0) made.className = classes.join(' ');
  for (const [name, value] of Object.entries(props)) {
    if (value === null || value === undefined) continue;
    if (name.startsWith('on')) made.addEventListener(name.slice(2), value);
    else if (typeof value === 'boolean' && name in made) made[name] = value;
    else made.setAttribute(name, value);
  }
  made.append(
    ...children.flat(Infinity).filter((child) => child !== null && child !== undefined && child !== false && child !== ''),
  );
  return made;
}

export function icon(name) {
  const made = el('span.icon', { 'aria-hidden': 'true' });
  made.style.setProperty('--drawing', `url("icons/${name}.svg")`);
  return made;
}

const kVerdictIcons = { take: 'take', keep: 'keep', kill_standing: 'kill', look_again: 'look' };
/// The icon of a verdict.
export const iconOf = (verdict) => kVerdictIcons[verdict] ?? 'minus';

/// Does it when a finger is lifted inside the button, however far it slipped there; a finger beside another does nothing.
/// A button that scrolls with its list takes the browser's own click instead.
export function onPress(button, act) {
  let pressed = null;
  let done = false;
  const inside = (event) => button.contains(document.elementFromPoint(event.clientX, event.clientY));
  button.addEventListener('pointerdown', (event) => {
    done = false;
    pressed = event.isPrimary && event.pointerType !== 'mouse' ? event.pointerId : null;
  });
  button.addEventListener('pointercancel', () => (pressed = null));
  button.addEventListener('pointerup', (event) => {
    if (event.pointerId !== pressed || button.disabled || !inside(event)) return;
    pressed = null;
    done = true;
    act();
  });
  // What was done may have laid something else under the finger: the browser must not click that.
  button.addEventListener('touchend', (event) => done && event.cancelable && event.preventDefault());
  button.addEventListener('click', (event) => {
    if (done && event.detail > 0) done = false;
    else act();
  });
}

/// A control that a gloved finger presses. `look`: any of main, large, small, tall, bare; atTree: on a page that does not scroll.
export function tap({ text, sub, symbol, spoken, help, look = '', on, enabled = true, atTree = false, act }) {
  const bare = look.split(' ').includes('bare');
  const made = el(
    `button.tap.${look.split(' ').filter(Boolean).join('.')}`.replace(/\.$/, ''),
    {
      type: 'button',
      disabled: !enabled,
      'aria-label': spoken ?? (bare ? text : null),
      'aria-pressed': on === undefined ? null : String(on),
      title: help,
    },
    symbol ? icon(symbol) : null,
    bare ? null : el('span.label', {}, el('span', {}, text), sub ? el('span.sub', {}, sub) : null),
  );
  if (atTree) {
    made.classList.add('still');
    onPress(made, act);
  } else {
    made.addEventListener('click', act);
  }
  return made;
}

export const words = (text, look = '') => (text ? el(`p${look ? `.${look}` : ''}`, {}, text) : null);

/// What went wrong, told where it happened.
export const problem = (text) => (text ? el('p.problem', { role: 'alert' }, icon('caution'), el('span', {}, text)) : null);

/// What may hurt somebody: before all else that is said of a tree.
export function cautionLines(cautions, say) {
  return cautions.map((one) =>
    el(`p.caution.${one.severity}`, { role: 'note' }, icon('caution'), el('span', {}, say(one.words))),
  );
}

/// Chips of which one or several are on, under their heading.
export function chips({ title, options, columns = '', act }) {
  return el(
    'div.chips',
    { role: 'group', 'aria-label': title ?? null },
    title ? el('p.soft', {}, title) : null,
    el(
      `div.grid${columns ? `.${columns}` : ''}`,
      {},
      options.map((one) => tap({ ...one, look: one.look ?? 'small', act: () => act(one) })),
    ),
  );
}

/// Text that would leave its box becomes smaller, down to the least that is read at arm's length.
export function fit(box) {
  const steps = box.classList.contains('figure') ? ['', 'figure-1', 'large', 'body', 'small'] : ['', 'fit-1', 'fit-2', 'small'];
  for (const step of steps) {
    box.style.fontSize = step && `var(--${step})`;
    const high = box.closest('.cell') !== null && box.scrollHeight > box.clientHeight;
    if (box.scrollWidth <= box.clientWidth && !high) return;
  }
}

/// The same for the words on all buttons of a box.
export function fitAll(box) {
  for (const label of box.querySelectorAll('.tap .label')) fit(label);
}
