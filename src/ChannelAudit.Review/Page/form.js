// The form: a verdict, how far it reaches, a reason.
import { $, complain, node, now, sign } from './parts.js';

const shortest = 3;
const offered = 3;
const field = $('reason');
let isTyped = false;

const chosen = name => document.querySelector(`input[name=${name}]:checked`)?.value;

function check(name, word) {
  document.querySelector(`input[name=${name}][value=${word}]`).checked = true;
}

// What is to be decided; null when something is missing, which is said then.
export function wish() {
  const verdict = chosen('verdict');
  const reason = field.value.trim();
  if (now.cell.obstacle) {
    complain(now.cell.obstacle);
    return null;
  }
  if (!verdict) {
    complain('Choose a verdict: 1, 2 or 3.');
    return null;
  }
  if (reason.length < shortest) {
    complain(reason === '' ? 'Say why: who reads it later cannot ask.' : 'Say why in words: who reads it later cannot ask.');
    field.focus();
    return null;
  }
  const reach = chosen('reach');
  return { verdict, reason, reach, others: reach === 'alike' ? now.cell.alike : 0 };
}

export const isBegun = () => Boolean(chosen('verdict')) || field.value !== '';

export function choose(word) {
  if ($('form').hidden) {
    return;
  }
  check('verdict', word);
  fillIn();
  field.focus();
}

// Pressed again, a key goes back to the trial.
export function reach(word) {
  const isThere = !$('form').hidden && !now.state.isBlind && (word !== 'alike' || now.cell.alike > 0);
  if (isThere) {
    check('reach', chosen('reach') === word ? 'trial' : word);
    showReach();
  }
}

export function clearForm() {
  $('form').reset();
  showForm();
  setReason('');
}

export function showForm() {
  const { state, cell } = now;
  $('form').hidden = state.isReadOnly;
  $('reach').hidden = state.isBlind;
  $('alike').hidden = cell.alike === 0;
  $('alike-count').textContent = `+ ${cell.alike}`;
  $('decide').disabled = cell.obstacle !== '';
  $('undo').disabled = !state.undo;
  $('undoable').textContent = $('undoable').title = state.undo ? `Undo takes back: ${state.undo.words}` : '';
  if (chosen('reach') === 'alike' && cell.alike === 0) {
    check('reach', 'trial');
  }
  showReach();
  showOffers();
}

function showReach() {
  const { cell } = now;
  const words = {
    trial: '',
    channel: () => `As a whole, computed ${sign(cell.whole.verdict)} ${cell.whole.verdict}. Undecided trials become worse by it, never better.`,
    alike: () => `This one, and the same for the ${cell.alike} other undecided trials of ${cell.channel} with the same reasons.`,
  }[chosen('reach')];
  $('reach-words').textContent = words && words();
  $('decide').textContent = { trial: 'Decide', channel: 'Decide the channel', alike: `Decide ${cell.alike + 1} trials` }[chosen('reach')];
}

// The reason. The last one stands there at once, selected: Enter repeats it, typing replaces it.

function setReason(text) {
  field.value = text;
  isTyped = false;
  grow();
}

function fillIn() {
  if (field.value === '') {
    setReason(now.state.reasons[0] ?? '');
    showOffers();
  }
}

function grow() {
  field.style.height = 'auto';
  field.style.height = `${field.scrollHeight + 2}px`;
}

// The latest ones; while something is typed, those that hold it.
function showOffers() {
  const typed = isTyped ? field.value.trim().toLowerCase() : '';
  const fitting = now.state.reasons.filter(reason => reason !== field.value && reason.toLowerCase().includes(typed)).slice(0, offered);
  $('offers').replaceChildren(...fitting.map(reason => node('button', { type: 'button', title: reason }, reason)));
}

function moveAmongOffers(event) {
  const all = [field, ...$('offers').children];
  const place = all.indexOf(event.target) + (event.key === 'ArrowDown' ? 1 : -1);
  const isLeaving = event.target !== field || (event.key === 'ArrowDown' && field.selectionEnd === field.value.length);
  if (event.key.startsWith('Arrow') && isLeaving && all[place]) {
    event.preventDefault();
    all[place].focus();
  }
}

export function listenToForm() {
  let wasElsewhere = false;
  field.addEventListener('focus', () => field.select());
  field.addEventListener('mousedown', () => { wasElsewhere = document.activeElement !== field; });
  field.addEventListener('mouseup', () => wasElsewhere && field.selectionStart === field.selectionEnd && field.select());
  field.addEventListener('input', () => {
    isTyped = true;
    field.value = /[\r\n]/.test(field.value) ? field.value.replace(/[\r\n]+/g, ' ') : field.value;
    grow();
    showOffers();
  });
  field.addEventListener('keydown', event => (event.key === 'ArrowDown' || event.key === 'ArrowUp') && moveAmongOffers(event));
  $('offers').addEventListener('keydown', event => (event.key === 'ArrowDown' || event.key === 'ArrowUp') && moveAmongOffers(event));
  $('offers').addEventListener('click', event => {
    if (event.target.type === 'button') {
      setReason(event.target.title);
      field.focus();
      showOffers();
    }
  });
  $('verdicts').addEventListener('change', fillIn);
  $('reach').addEventListener('change', showReach);
}
