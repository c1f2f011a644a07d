// The picture of the cell, and the stretch of time that it shows.
import { $, moment, node, now } from './parts.js';
import { markShown } from './ribbon.js';

export const dark = matchMedia('(prefers-color-scheme: dark)');
const ahead = new Map();
const shortestS = 0.02;
let turn = 0;
let isBehind = false;

export function addressOf(number, from, to) {
  const box = $('picture').getBoundingClientRect();
  const scale = Math.min(2, Math.max(1, Math.ceil(devicePixelRatio)));
  const size = length => Math.max(1, Math.round(length)) * scale;
  const fields = { n: number, from, to, w: size(box.width), h: size(box.height), x: scale, look: dark.matches ? 'dark' : 'light', ...(isBehind && { behind: 1 }) };
  return `/picture?${new URLSearchParams(fields)}`;
}

export function load(address) {
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

export async function showPicture() {
  const mine = ++turn;
  const { cell, view } = now;
  const isSheet = cell.data === 'none';
  $('picture').classList.toggle('sheet', isSheet);
  $('time').hidden = isSheet;
  $('shown').textContent = isSheet ? '' : `${moment(view.from)} to ${moment(view.to)}`;
  markShown();
  let shown = [];
  if (!isSheet || cell.hasSheet) {
    try {
      const image = await load(isSheet ? `/sheet?n=${cell.number}` : addressOf(cell.number, view.from, view.to));
      image.alt = isSheet
        ? `Sheet of ${cell.channel}`
        : `Trace of ${cell.channel} from ${moment(view.from)} to ${moment(view.to)} with the window of the trial, other channels below it, and the spectrum of the window`;
      shown = [image];
    } catch {
      shown = [node('p', {}, 'There is no picture of it.')];
    }
  }
  if (mine === turn) {
    $('picture').replaceChildren(...shown);
    $('picture').dataset.cell = cell.number;
  }
}

function look(from, to) {
  const { cell } = now;
  if (cell.data === 'none') {
    return;
  }
  const length = Math.min(to - from, cell.mostS - cell.leastS, cell.longestS);
  const start = Math.min(Math.max(from, cell.leastS), cell.mostS - length);
  now.view = { from: Math.round(start * 1e4) / 1e4, to: Math.round((start + length) * 1e4) / 1e4 };
  showPicture();
}

export const step = share => look(now.view.from + share * (now.view.to - now.view.from), now.view.to + share * (now.view.to - now.view.from));

// About the trial as far as it is in sight; who has gone away from it stays there.
export function zoom(factor) {
  const { from, to } = now.view;
  const [first, last] = [Math.max(from, now.cell.windowFromS), Math.min(to, now.cell.windowToS)];
  const middle = first < last ? (first + last) / 2 : (from + to) / 2;
  const half = Math.max(shortestS, (to - from) * factor) / 2;
  look(middle - half, middle + half);
}

// The trial's own trace and its spectrum as they are, or behind the high-pass of scoring: what is left of a finding there.
export function toggleFilter() {
  isBehind = !isBehind;
  $('behind').setAttribute('aria-pressed', String(isBehind));
  showPicture();
}

export const whole = () => look(now.cell.fromS, now.cell.toS);
