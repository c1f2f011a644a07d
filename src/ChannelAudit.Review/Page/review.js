// The review page: shows a cell, makes the next picture ahead, sends decisions. Texts become nodes of text, never markup.
const $ = id => document.getElementById(id);
const shapes = { pass: '●', questionable: '▲', reject: '■' };
const dark = matchMedia('(prefers-color-scheme: dark)');
const ahead = new Map();
const visited = [];
let state = null;
let cell = null;
let view = null;
let seen = 0;
let lastReason = '';
let isBusy = false;
let turn = 0;
let usesKeys = sessionStorage.getItem('keys') !== 'off';

function node(tag, attributes = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    made.setAttribute(name, value);
  }
  made.append(...children);
  return made;
}

function drawn(tag, attributes, text) {
  const made = document.createElementNS('http://www.w3.org/2000/svg', tag);
  for (const [name, value] of Object.entries(attributes)) {
    made.setAttribute(name, value);
  }
  made.textContent = text ?? '';
  return made;
}

const verdict = word => node('b', { class: word }, `${shapes[word]} ${word}`);

function say(words) {
  $('live').textContent = words;
}

function complain(words) {
  $('fault').textContent = words;
}

async function ask(path) {
  const answer = await fetch(path);
  const body = await answer.json();
  if (!answer.ok) {
    throw new Error(`${body.error}. ${body.hint}`);
  }
  return body;
}

async function tell(path, fields) {
  const answer = await fetch(path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(fields) });
  return { status: answer.status, body: await answer.json() };
}

// What is left to do.

function showState(now) {
  state = now;
  document.title = state.leftCount === 0 ? 'Review: nothing left' : `Review: ${state.leftCount} left`;
  $('left').textContent = `Left to look at: ${state.leftCount === 0 ? 'nothing' : state.left}`;
  const how = [state.isBlind && 'blind', state.isReadOnly && 'read-only', state.by && `as ${state.by}`].filter(Boolean);
  $('who').textContent = how.join(', ');
  $('form').hidden = state.isReadOnly;
  $('tables').hidden = state.isReadOnly || state.isBlind;
  $('undo').disabled = state.undo === 0;
  $('undoable').textContent = state.undo === 0 ? '' : `Undo takes back: ${state.undoWords}`;
  $('reasons').replaceChildren(...state.reasons.map(reason => node('option', { value: reason })));
  lastReason = state.reasons[0] ?? lastReason;
}

// The cell.

const seconds = value => `${Math.round(value * 1000) / 1000} s`;

function showTitle() {
  const name = state.isBlind
    ? [`Cell ${cell.number} of ${state.count}: `, node('bdi', {}, cell.channel)]
    : [node('bdi', {}, cell.channel), `, trial ${cell.trial}`, ...(cell.label ? [', ', node('bdi', {}, cell.label)] : []), node('small', {}, node('bdi', {}, cell.recording), `, ${cell.when}`)];
  $('title').replaceChildren(...name);
}

function measures() {
  const rows = cell.measures.map(one => node('tr', {},
    node('th', { scope: 'row', title: one.meaning }, one.name), node('td', {}, one.value), node('td', {}, one.questionable), node('td', {}, one.reject)));
  const head = node('tr', {}, ...['Measure', 'Value', 'Questionable', 'Reject'].map(name => node('th', { scope: 'col' }, name)));
  return node('details', {}, node('summary', {}, 'Measures and limits'), node('table', {}, node('thead', {}, head), node('tbody', {}, ...rows)));
}

function showWords() {
  $('words').hidden = state.isBlind;
  if (state.isBlind) {
    return;
  }
  const findings = cell.findings.map(one => node('li', {},
    node('b', { class: one.grade }, `${one.letter}: ${one.name}, ${one.grade}`), ` ${one.text}.`,
    node('small', {}, [...one.measured, one.effect].filter(Boolean).join('; '))));
  const open = cell.notAssessed.map(text => node('li', {}, node('small', {}, `Not assessed: ${text}`)));
  const nothing = cell.findings.length === 0 ? [node('p', {}, 'Nothing was found in what was assessed.')] : [];
  const final = cell.final === cell.verdict ? [] : [', final ', verdict(cell.final)];
  $('words').replaceChildren(
    node('p', {}, 'Computed ', verdict(cell.verdict), ...final), ...nothing, node('ul', {}, ...findings, ...open), measures());
}

function showDecisions() {
  $('undecided').hidden = cell.decisions.length > 0;
  $('decisions').replaceChildren(...cell.decisions.map(one => node('li', one.state.startsWith('holds') || one.state === 'yours' ? {} : { class: 'past' },
    verdict(one.verdict), ' ', node('bdi', {}, one.reason),
    node('small', {}, node('bdi', {}, one.by), `, ${one.when}${one.about ? `, ${one.about}` : ''}: ${one.state}`))));
}

function showWarning() {
  $('warning').hidden = cell.dataWords === '';
  $('warning').textContent = cell.dataWords;
  $('decide').disabled = cell.data === 'differs' || cell.data === 'missing';
}

// The picture.

function addressOf(number, from, to) {
  const box = $('picture').getBoundingClientRect();
  const scale = Math.min(2, Math.max(1, Math.ceil(devicePixelRatio)));
  const size = length => Math.max(1, Math.round(length)) * scale;
  const fields = { n: number, from, to, w: size(box.width), h: size(box.height), x: scale, look: dark.matches ? 'dark' : 'light' };
  return `/picture?${new URLSearchParams(fields)}`;
}

function load(address) {
  const known = ahead.get(address);
  if (known) {
    return known;
  }
  const image = new Image();
  image.src = address;
  const loaded = image.decode().then(() => image);
  loaded.catch(() => ahead.delete(address));
  ahead.set(address, loaded);
  while (ahead.size > 4) {
    ahead.delete(ahead.keys().next().value);
  }
  return loaded;
}

async function showPicture() {
  const mine = ++turn;
  $('picture').classList.toggle('sheet', cell.data === 'none');
  $('time').hidden = cell.data === 'none';
  if (cell.data === 'none' && !cell.hasSheet) {
    $('picture').replaceChildren(node('p', {}, 'The audit holds no picture of this channel: screen makes them with --figures all.'));
    return;
  }
  try {
    const image = await load(cell.data === 'none' ? `/sheet?n=${cell.number}` : addressOf(cell.number, view.from, view.to));
    if (mine !== turn) {
      return;
    }
    image.alt = cell.data === 'none'
      ? `Sheet of ${cell.channel}`
      : `Trace of ${cell.channel} from ${seconds(view.from)} to ${seconds(view.to)} with the window of the trial, other channels below it, and the spectrum of the window`;
    $('picture').replaceChildren(image);
    $('shown').textContent = cell.data === 'none' ? '' : `${seconds(view.from)} to ${seconds(view.to)}`;
    $('picture').dataset.cell = cell.number;
  } catch {
    if (mine === turn) {
      $('picture').replaceChildren(node('p', {}, 'The picture of this cell cannot be made: the recording is not there, or cannot be read.'));
      $('picture').dataset.cell = cell.number;
    }
  }
}

function look(from, to) {
  const length = Math.min(to - from, cell.mostS - cell.leastS, 120);
  const start = Math.min(Math.max(from, cell.leastS), cell.mostS - length);
  view = { from: Math.round(start * 1e4) / 1e4, to: Math.round((start + length) * 1e4) / 1e4 };
  showPicture();
}

const step = share => look(view.from + share * (view.to - view.from), view.to + share * (view.to - view.from));

function zoom(factor) {
  const middle = (view.from + view.to) / 2;
  const half = Math.max(0.02, (view.to - view.from) * factor) / 2;
  look(middle - half, middle + half);
}

const whole = () => look(cell.fromS, cell.toS);

// The ribbon.

async function showRibbon() {
  $('session').hidden = state.isBlind;
  if (state.isBlind) {
    return;
  }
  const session = await ask(`/ribbon?n=${cell.number}`);
  const width = Math.max(300, $('ribbon').clientWidth);
  const row = session.channels.length > 4 ? 18 : 22;
  const left = 84;
  const x = time => left + (width - left - 4) * Math.min(1, Math.max(0, time / session.durationS));
  const picture = drawn('svg', {
    viewBox: `0 0 ${width} ${row * session.channels.length}`, role: 'img',
    'aria-label': `Session ${session.recording}: ${session.channels.map(one => `${one.name} ${one.verdict}`).join(', ')}. A click leads to a trial; the arrow keys do too.`,
  });
  picture.style.height = `${row * session.channels.length}px`;
  session.channels.forEach((channel, place) => {
    const top = place * row;
    picture.append(drawn('rect', { class: 'lane', x: left, y: top + 1, width: width - left - 4, height: row - 2 }));
    picture.append(drawn('text', { x: 0, y: top + row - 7 }, channel.name.length > 12 ? `${channel.name.slice(0, 11)}…` : channel.name));
    for (const one of channel.cells) {
      const from = x(one.fromS);
      const wide = Math.max(3, x(one.toS) - from);
      const heights = { pass: 0.35, questionable: 0.6, reject: 0.9 };
      const high = (row - 4) * heights[one.final];
      const block = drawn('rect', { class: one.final, x: from, y: top + row - 2 - high, width: wide, height: high });
      const hit = drawn('rect', { class: one.number === cell.number ? 'hit here' : 'hit', x: from, y: top + 1, width: wide, height: row - 2, 'data-n': one.number });
      hit.append(drawn('title', {}, `${channel.name}, trial ${one.trial}: ${one.final}${one.isDecided ? ', decided' : ''}`));
      picture.append(block);
      if (one.isDecided) {
        picture.append(drawn('circle', { class: 'decided', cx: from + wide / 2, cy: top + 4, r: 2.5 }));
      }
      picture.append(hit);
    }
  });
  $('session-name').replaceChildren(node('bdi', {}, session.recording));
  $('ribbon').replaceChildren(picture);
}

// Going on.

async function show(number, { isBack = false, words = '' } = {}) {
  const before = cell;
  cell = await ask(`/cell?n=${number}`);
  if (before && !isBack && before.number !== number) {
    visited.push(before.number);
  }
  seen = cell.seen;
  view = { from: cell.fromS, to: cell.toS };
  $('form').reset();
  complain('');
  showTitle();
  showWords();
  showDecisions();
  showWarning();
  history.replaceState(null, '', `#${number}`);
  $('next').disabled = cell.next === null;
  $('back').disabled = visited.length === 0;
  // A ribbon of another recording may be higher, and the picture takes what is left.
  const ribbon = showRibbon();
  if (before?.recording !== cell.recording) {
    await ribbon;
  }
  await Promise.all([showPicture(), ribbon]);
  say(`${words}${$('title').textContent}${cell.verdict ? `: ${cell.verdict}` : ''}. ${$('left').textContent}.`);
  $('title').focus({ preventScroll: true });
  if (cell.data === 'checking') {
    setTimeout(poll, 400);
  }
  prepare(cell.next);
}

async function prepare(number) {
  if (number === null || number === cell.number || cell.data === 'none') {
    return;
  }
  try {
    const next = await ask(`/cell?n=${number}`);
    await load(addressOf(number, next.fromS, next.toS));
  } catch {
    // It is asked for again when it is shown, and says then what is wrong.
  }
}

async function goOn(number, options) {
  if (number === null || number === undefined) {
    say('There is nothing further.');
    return;
  }
  try {
    await show(number, options);
  } catch (fault) {
    complain(fault.message);
    say(fault.message);
  }
}

const next = words => goOn(cell.next, { words });
const back = () => visited.length > 0 && goOn(visited.pop(), { isBack: true });

async function once(work) {
  if (isBusy) {
    return;
  }
  isBusy = true;
  complain('');
  try {
    await work();
  } catch (fault) {
    complain(fault.message);
  } finally {
    isBusy = false;
  }
}

function decide() {
  const chosen = document.querySelector('input[name=verdict]:checked');
  const reason = $('reason').value.trim();
  if (!chosen) {
    complain('Choose a verdict: 1, 2 or 3.');
    return;
  }
  if (reason === '') {
    complain('Say why: who reads it later cannot ask.');
    $('reason').focus();
    return;
  }
  once(async () => {
    const { status, body } = await tell('/decide', { n: cell.number, verdict: chosen.value, reason, seen });
    if (status === 409) {
      // Told before anything is written; who decides again does so knowing it.
      seen = body.seen;
      complain(`${body.error}. ${body.hint}`);
      await refresh();
      return;
    }
    if (status !== 200) {
      throw new Error(`${body.error}. ${body.hint}`);
    }
    const words = `Decided: ${chosen.value}. `;
    showState(body.state);
    if (body.next === null) {
      await show(cell.number, { words: `${words}Nothing is left to look at. ` });
    } else {
      await show(body.next, { words });
    }
  });
}

function undo() {
  if (!state || state.undo === 0) {
    say('There is nothing to take back.');
    return;
  }
  once(async () => {
    const words = state.undoWords;
    const { status, body } = await tell('/withdraw', { number: state.undo });
    if (status !== 200) {
      throw new Error(`${body.error}. ${body.hint}`);
    }
    showState(body.state);
    await refresh();
    say(`Taken back: ${words}. ${$('left').textContent}.`);
  });
}

// What others did meanwhile: what was decided is shown at once, what is being written stays.
async function refresh() {
  const now = await ask(`/cell?n=${cell.number}`);
  const isNew = now.decisions.length > cell.decisions.length;
  cell = { ...now };
  seen = Math.max(seen, now.seen);
  showWords();
  showDecisions();
  showWarning();
  $('next').disabled = cell.next === null;
  await showRibbon();
  return isNew;
}

async function poll() {
  if (isBusy || !cell) {
    return;
  }
  try {
    const now = await ask('/state');
    if (now.seen !== state.seen || cell.data === 'checking') {
      showState(now);
      if (await refresh()) {
        say('A decision about this cell was added.');
      }
    }
  } catch (fault) {
    complain(fault.message);
  }
}

// The keyboard.

const keys = {
  1: () => choose('pass'),
  2: () => choose('questionable'),
  3: () => choose('reject'),
  r: () => { $('reason').value = lastReason; $('reason').focus(); },
  n: () => next(''),
  b: back,
  u: undo,
  ArrowLeft: () => step(-0.5),
  ArrowRight: () => step(0.5),
  '+': () => zoom(0.5),
  '=': () => zoom(0.5),
  '-': () => zoom(2),
  0: whole,
  ',': () => goOn(cell.earlier),
  '.': () => goOn(cell.later),
  ArrowUp: () => goOn(cell.above),
  ArrowDown: () => goOn(cell.below),
};

function choose(word) {
  if ($('form').hidden) {
    return;
  }
  document.querySelector(`input[name=verdict][value=${word}]`).checked = true;
  $('reason').focus();
}

function onKey(event) {
  if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) {
    return;
  }
  const isWriting = event.target.id === 'reason';
  if (event.key === 'Escape' && isWriting) {
    $('title').focus({ preventScroll: true });
    return;
  }

  // A radio button, an open list and a page that is scrolled have arrow keys of their own.
  const isOwn = isWriting || (event.target.type === 'radio' && event.key.startsWith('Arrow'));
  if (!usesKeys || isOwn || !cell || !Object.hasOwn(keys, event.key)) {
    return;
  }
  event.preventDefault();
  keys[event.key]();
}

function showKeys() {
  $('keys-switch').setAttribute('aria-pressed', String(usesKeys));
  $('keys-switch').textContent = `Single keys: ${usesKeys ? 'on' : 'off'}`;
  const all = [
    ['1 2 3', 'verdict'], ['r', 'last reason'], ['Enter', 'decide'], ['Esc', 'leave the field'], ['n', 'next undecided'], ['b', 'back'], ['u', 'undo'],
    ['← →', 'time'], ['+ - 0', 'closer, wider, whole'], ...(state.isBlind ? [] : [[', .', 'trial before, after'], ['↑ ↓', 'channel']]),
  ];
  $('keys').replaceChildren(...all.flatMap(([key, what], place) => [place > 0 ? ' · ' : '', node('kbd', {}, key), ` ${what}`]));
}

function listen() {
  document.addEventListener('keydown', onKey);
  $('form').addEventListener('submit', event => { event.preventDefault(); decide(); });
  $('undo').addEventListener('click', undo);
  $('next').addEventListener('click', () => next(''));
  $('back').addEventListener('click', back);
  $('earlier').addEventListener('click', () => step(-0.5));
  $('later').addEventListener('click', () => step(0.5));
  $('closer').addEventListener('click', () => zoom(0.5));
  $('wider').addEventListener('click', () => zoom(2));
  $('whole').addEventListener('click', whole);
  $('tables').addEventListener('click', () => once(async () => {
    const { status, body } = await tell('/tables', {});
    say(status === 200 ? 'Tables and pages are up to date.' : body.error);
    complain(status === 200 ? '' : `${body.error}. ${body.hint}`);
  }));
  $('ribbon').addEventListener('click', event => event.target.dataset.n && goOn(Number(event.target.dataset.n)));
  $('keys-switch').addEventListener('click', () => {
    usesKeys = !usesKeys;
    sessionStorage.setItem('keys', usesKeys ? 'on' : 'off');
    showKeys();
  });
  dark.addEventListener('change', () => cell && showPicture());
  let resized = 0;
  addEventListener('resize', () => {
    clearTimeout(resized);
    resized = setTimeout(() => cell && Promise.all([showPicture(), showRibbon()]), 150);
  });
}

async function start() {
  showState(await ask('/state'));
  showKeys();
  listen();
  const asked = Number(location.hash.slice(1));
  await show(asked >= 1 && asked <= state.count ? asked : state.first ?? 1);
  setInterval(poll, 3000);
}

start().catch(fault => {
  $('title').textContent = fault.message;
});
