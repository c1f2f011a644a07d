// The review page: shows a cell, makes the next picture ahead, sends decisions.
import { choose, clearForm, isBegun, listenToForm, reach, showForm, wish } from './form.js';
import { listenToKeys, showKeys } from './keys.js';
import { $, complain, markMore, now, say } from './parts.js';
import { addressOf, dark, load, showPicture, step, toggleFilter, whole, zoom } from './picture.js';
import { showRibbon } from './ribbon.js';
import { ask, Gone, tell } from './server.js';
import { nameOf, showTitle, showWords } from './words.js';

const visited = [];
let isBusy = false;
let shown = 0;
let askedAbout = 0;
const madeOn = new Map();

function showState(state) {
  now.state = state;
  document.title = state.leftCount === 0 ? 'Review: nothing left' : `Review: ${state.leftCount} left`;
  $('left').textContent = `Left to look at: ${state.left}`;
  $('progress').textContent = state.progress;
  $('who').textContent = [state.isBlind && 'blind', state.isReadOnly && 'read-only', state.by && `as ${state.by}`].filter(Boolean).join(', ');
  $('tables').hidden = state.isReadOnly || state.isBlind;
}

// Everything about the cell but its picture; what is being written stays.
function showCell() {
  showTitle();
  showForm();
  showWords();
  showKeys();
  $('next').disabled = now.cell.next === null;
  $('back').disabled = visited.length === 0;
}

async function show(number, { isBack = false, words = '' } = {}) {
  const before = now.cell;
  const mine = ++shown;
  const cell = await ask(`/cell?n=${number}`);
  if (mine !== shown) {
    return;
  }
  if (before && !isBack && before.number !== number) {
    visited.push(before.number);
  }
  Object.assign(now, { cell, seen: cell.seen, view: { from: cell.fromS, to: cell.toS } });
  askedAbout = 0;
  clearForm();
  complain('');
  showCell();
  $('known').scrollTop = 0;
  history.replaceState(null, '', `#${number}`);
  // A ribbon of another recording may be higher, and the picture takes what is left.
  const ribbon = showRibbon();
  if (before?.recording !== cell.recording) {
    await ribbon;
  }
  await Promise.all([showPicture(), ribbon]);
  say(words || `Shown: ${nameOf(cell)}${cell.verdict ? `, ${cell.verdict}` : ''}.`);
  $('title').focus({ preventScroll: true });
  if (cell.data === 'checking') {
    setTimeout(poll, 400);
  }
  prepare(cell.next);
}

async function prepare(number) {
  if (number === null || number === now.cell.number || now.cell.data === 'none') {
    return;
  }
  try {
    const next = await ask(`/cell?n=${number}`);
    await load(addressOf(number, next.fromS, next.toS));
  } catch {
    // It is asked for again when it is shown, and says then what is wrong.
  }
}

function failed(fault) {
  complain(fault.message);
  if (fault instanceof Gone) {
    end(fault.message);
  } else {
    say(fault.message);
  }
}

// Over the page, but not over the form: the text can still be copied.
function end(words) {
  $('gone').textContent = words;
  $('gone').hidden = false;
  document.body.classList.add('gone');
}

function goOnAgain() {
  if (!$('gone').hidden) {
    $('gone').hidden = true;
    document.body.classList.remove('gone');
    complain('');
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
    failed(fault);
  }
}

const back = () => (visited.length > 0 ? goOn(visited.pop(), { isBack: true }) : say('There is nothing before it.'));

async function once(work) {
  if (isBusy) {
    say('One moment: still at work.');
    return;
  }
  if (document.body.classList.contains('gone')) {
    failed(notWritten());
    return;
  }
  isBusy = true;
  complain('');
  try {
    await work();
  } catch (fault) {
    failed(fault);
  } finally {
    isBusy = false;
  }
}

const notWritten = () => new Gone('The review has ended: this was not written. Start it again; your text stays here.');

// Sends something to be written; what is refused is looked at again.
async function write(path, fields) {
  try {
    const { status, body } = await tell(path, fields);
    if (status === 200) {
      return body;
    }
    // Told before anything is written; who decides again does so knowing it.
    now.seen = body.seen ?? now.seen;
    complain(`${body.error}. ${body.hint}`);
    await refresh();
    return null;
  } catch (fault) {
    throw fault instanceof Gone ? notWritten() : fault;
  }
}

function decide() {
  const wanted = wish();
  if (!wanted) {
    return;
  }
  once(async () => {
    const { cell } = now;
    const body = await write('/decide', { n: cell.number, seen: now.seen, ...wanted });
    if (body) {
      const what = { trial: nameOf(cell), channel: `${cell.channel} as a whole`, alike: `${body.count} trials of ${cell.channel}` }[wanted.reach];
      showState(body.state);
      madeOn.set(body.state.undo?.number, cell.number);
      // A channel that is decided leaves its trial to be decided.
      const end = body.state.leftCount === 0 ? ' Nothing is left to look at.' : '';
      await show(wanted.reach === 'channel' ? cell.number : body.next ?? cell.number, { words: `Decided: ${what}: ${wanted.verdict}.${end}` });
    }
  });
}

function undo() {
  const what = now.state.undo;
  if (!what || now.state.isReadOnly) {
    say('There is nothing to take back.');
    return;
  }
  if (what.isEarlier && askedAbout !== what.number) {
    askedAbout = what.number;
    complain(`This was decided before this review was started: ${what.words}. Undo once more takes it back.`);
    return;
  }
  once(async () => {
    const body = await write('/withdraw', { number: what.number });
    if (body) {
      showState(body.state);
      await show(madeOn.get(what.number) ?? (body.cell || now.cell.number), { words: `Taken back: ${what.words}.` });
    }
  });
}

const updateTables = () => !$('tables').hidden && once(async () => {
  say('Tables and pages are being brought up to date.');
  if (await write('/tables', {})) {
    say('Tables and pages are up to date.');
  }
});

// What others did meanwhile is shown at once.
async function refresh() {
  const known = new Set(now.cell.decisions.map(one => one.number));
  const mine = shown;
  const cell = await ask(`/cell?n=${now.cell.number}`);
  if (mine !== shown) {
    return [];
  }
  now.cell = cell;
  // Who has begun to decide is told by the server before anything is written: what has just come in may not have been read.
  now.seen = isBegun() ? now.seen : Math.max(now.seen, cell.seen);
  showCell();
  await showRibbon();
  return cell.decisions.filter(one => !known.has(one.number));
}

async function poll() {
  if (isBusy || !now.cell) {
    return;
  }
  try {
    const state = await ask('/state');
    goOnAgain();
    if (state.seen !== now.state.seen || now.cell.data === 'checking') {
      showState(state);
      const added = await refresh();
      if (!$('fault').textContent) {
        complain('');
      }
      if (added.length > 0) {
        say(`A decision about this cell was added by ${added.at(-1).by}.`);
      }
    }
  } catch (fault) {
    failed(fault);
  }
}

// By keyboard and by mouse.

const isLast = () => now.cell.next === null && now.state.leftCount > 0;
const next = () => (isLast() ? say('Nothing further: what is left is here.') : goOn(now.cell.next));
const ways = {
  earlier: () => step(-0.5), later: () => step(0.5), closer: () => zoom(0.5), wider: () => zoom(2), whole, behind: toggleFilter, next, back, undo, tables: updateTables,
};
const keys = {
  1: () => choose('pass'),
  2: () => choose('questionable'),
  3: () => choose('reject'),
  c: () => reach('channel'),
  a: () => reach('alike'),
  n: next,
  b: back,
  u: undo,
  t: updateTables,
  ArrowLeft: ways.earlier,
  ArrowRight: ways.later,
  '+': ways.closer,
  '=': ways.closer,
  '-': ways.wider,
  0: whole,
  f: toggleFilter,
  ',': () => goOn(now.cell.earlier),
  '.': () => goOn(now.cell.later),
  ArrowUp: () => goOn(now.cell.above),
  ArrowDown: () => goOn(now.cell.below),
};

function listen() {
  listenToKeys(keys, decide, () => $('title').focus({ preventScroll: true }));
  listenToForm();
  $('form').addEventListener('submit', event => { event.preventDefault(); decide(); });
  Object.entries(ways).forEach(([id, way]) => $(id).addEventListener('click', () => now.cell && way()));
  $('ribbon').addEventListener('click', event => event.target.dataset.n && goOn(Number(event.target.dataset.n)));
  ['ribbon', 'known'].forEach(id => {
    $(id).addEventListener('scroll', () => markMore($(id)));
    new ResizeObserver(() => markMore($(id))).observe($(id));
  });
  $('known').addEventListener('toggle', () => markMore($('known')), true);
  dark.addEventListener('change', () => now.cell && showPicture());
  let resized = 0;
  addEventListener('resize', () => {
    clearTimeout(resized);
    resized = setTimeout(() => now.cell && showRibbon().then(showPicture).catch(failed), 150);
  });
}

async function start() {
  showState(await ask('/state'));
  showKeys();
  listen();
  const asked = Number(location.hash.slice(1));
  await show(asked >= 1 && asked <= now.state.count ? asked : now.state.first ?? 1);
  setInterval(poll, 3000);
}

start().catch(fault => {
  $('title').textContent = fault.message;
});
