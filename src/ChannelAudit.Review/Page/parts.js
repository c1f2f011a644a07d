// What every part of the page uses. Texts become nodes of text, never markup.
export const $ = id => document.getElementById(id);

// What is shown: where the review stands, the cell, the stretch of time, lines of the ledger that were seen.
export const now = { state: null, cell: null, view: null, seen: 0 };

const shapes = { pass: '○', questionable: '▲', reject: '⊠' };
const openPass = '◌?';

export function node(tag, attributes = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    made.setAttribute(name, value);
  }
  made.append(...children);
  return made;
}

export function drawn(tag, attributes, text) {
  const made = document.createElementNS('http://www.w3.org/2000/svg', tag);
  for (const [name, value] of Object.entries(attributes)) {
    made.setAttribute(name, value);
  }
  made.textContent = text ?? '';
  return made;
}

// A pass with something not assessed is never shown as a whole one.
export const sign = (word, isOpen = false) => (word === 'pass' && isOpen ? openPass : shapes[word]);
export const verdict = (word, isOpen = false) => node('b', { class: word }, `${sign(word, isOpen)} ${word}`);

export const moment = value => `${Math.round(value * 1000) / 1000} s`;

export function clock(time) {
  const two = number => String(number).padStart(2, '0');
  const whole = Math.floor(time + 1e-6);
  const minutes = `${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
  return whole < 3600 ? minutes : `${Math.floor(whole / 3600)}:${minutes}`;
}

export function say(words) {
  $('live').textContent = words;
}

// What prevents deciding is always said at the form.
export function complain(words) {
  $('fault').textContent = '';
  $('fault').textContent = words || now.cell?.obstacle || '';
  markMore($('known'));
}

// Nothing is cut off without a sign that there is more.
export function markMore(box) {
  box.toggleAttribute('data-more', box.scrollHeight - box.scrollTop - box.clientHeight > 4);
}
