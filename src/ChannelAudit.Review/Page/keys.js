// Single keys, and the line that says which there are now.
import { $, node, now } from './parts.js';

let isOn = sessionStorage.getItem('keys') !== 'off';

export function showKeys() {
  $('keys-switch').setAttribute('aria-pressed', String(isOn));
  $('keys-switch').textContent = `Single keys: ${isOn ? 'on' : 'off'}`;
  const all = isOn ? [...deciding(), ...looking()] : [];
  const off = isOn ? [] : ['Single keys are off: Tab and Enter reach everything.'];
  $('keys').replaceChildren(...off, ...all.flatMap(([key, what], place) => [place > 0 ? ' · ' : '', node('kbd', {}, key), ` ${what}`]));
}

function deciding() {
  const { state, cell } = now;
  return state.isReadOnly ? [] : [
    ['1 2 3', 'verdict'], ['Enter', 'decide'], ['Esc', 'leave the reason'],
    ...(state.isBlind ? [] : [['c', 'channel']]), ...(cell?.alike > 0 ? [['a', 'alike']] : []), ['u', 'undo'],
    ...(state.isBlind ? [] : [['t', 'tables']]),
  ];
}

function looking() {
  const { state, cell } = now;
  return [
    ['n', 'next undecided'], ['b', 'back'],
    ...(cell?.data === 'none' ? [] : [['← →', 'time'], ['+ - 0', 'closer, wider, whole'], ['f', 'high-pass']]),
    ...(state.isBlind ? [] : [[', .', 'other trial'], ['↑ ↓', 'other channel']]),
  ];
}

// The reason, a radio button and the offered reasons have keys of their own.
function isOwn(event) {
  const isArrow = event.key.startsWith('Arrow');
  return event.target.id === 'reason' || (isArrow && (event.target.type === 'radio' || event.target.closest('#offers')));
}

export function listenToKeys(keys, decide, leave) {
  document.addEventListener('keydown', event => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) {
      return;
    }
    if (event.key === 'Enter' && (event.target.id === 'reason' || event.target.type === 'radio')) {
      event.preventDefault();
      decide();
    } else if (event.key === 'Escape' && event.target.closest?.('#form')) {
      leave();
    } else if (isOn && now.cell && !document.body.classList.contains('gone') && !isOwn(event) && Object.hasOwn(keys, event.key)) {
      event.preventDefault();
      keys[event.key]();
    }
  });
  $('keys-switch').addEventListener('click', () => {
    isOn = !isOn;
    sessionStorage.setItem('keys', isOn ? 'on' : 'off');
    showKeys();
  });
}
