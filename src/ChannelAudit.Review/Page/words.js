// The cell in words: its name, what the rules say, every decision.
import { $, markMore, node, now, verdict } from './parts.js';

export function showTitle() {
  const { cell, state } = now;
  const label = cell.label ? [', ', node('bdi', {}, cell.label)] : [];
  $('title').replaceChildren(...(state.isBlind
    ? [`Cell ${cell.number} of ${state.count}: `, node('bdi', {}, cell.channel)]
    : [node('bdi', {}, cell.channel), `, trial ${cell.trial}`, ...label, node('small', {}, node('bdi', {}, cell.recording), `, ${cell.when}`)]));
}

export const nameOf = cell => (now.state.isBlind ? `cell ${cell.number}` : `${cell.channel}, trial ${cell.trial}`);

export function showWords() {
  showStanding();
  showDecisions();
  showFindings();
  $('done').hidden = now.state.done === '';
  $('done').textContent = now.state.done;
  $('warning').hidden = now.cell.dataWords === '';
  $('warning').textContent = now.cell.dataWords;
  markMore($('known'));
}

function showStanding() {
  const { cell, state } = now;
  if (state.isBlind) {
    $('standing').replaceChildren();
    return;
  }
  const isOpen = cell.notAssessed.length > 0;
  const final = cell.final === cell.verdict ? [] : [', final ', verdict(cell.final)];
  const { whole } = cell;
  const isLeft = whole.verdict !== 'pass' && !whole.isDecided;
  const wholeFinal = whole.final === whole.verdict ? [] : [', final ', verdict(whole.final)];
  $('standing').replaceChildren(
    node('p', {}, 'Computed ', verdict(cell.verdict, isOpen), ...final),
    node('p', { class: isLeft ? 'open' : 'settled', title: whole.reasons.join(', ') },
      'The channel: ', verdict(whole.verdict), ...wholeFinal, isLeft ? ', not decided' : whole.isDecided ? ', decided' : ''));
}

// What is over is folded away, so that what holds is seen.
function showDecisions() {
  const holds = one => one.state.startsWith('holds') || one.state === 'yours';
  const items = decisions => decisions.map(one => node('li', {}, verdict(one.verdict), ' ', node('bdi', {}, one.reason),
    node('small', {}, node('bdi', {}, one.by), `, ${one.when}${one.about ? `, ${one.about}` : ''}: ${one.state}`)));
  const past = now.cell.decisions.filter(one => !holds(one));
  $('decisions').replaceChildren(...items(now.cell.decisions.filter(holds)));
  $('undecided').hidden = $('decisions').children.length > 0;
  $('past').hidden = past.length === 0;
  $('past').replaceChildren(node('summary', {}, `No longer in force: ${past.length}`), node('ol', {}, ...items(past)));
}

function showFindings() {
  const { cell, state } = now;
  $('words').hidden = state.isBlind;
  if (state.isBlind) {
    return;
  }
  const findings = cell.findings.map(one => node('li', {},
    node('b', { class: one.grade }, `${one.letter}: ${one.name}, ${one.grade}`), ` ${one.text}.`,
    node('small', {}, [...one.measured, one.effect].filter(Boolean).join('; '))));
  const nothing = cell.findings.length === 0 ? [node('p', {}, 'Nothing was found in what was assessed.')] : [];
  $('words').replaceChildren(...nothing, node('ul', {}, ...findings), ...notAssessed(cell), measures(cell));
}

function notAssessed(cell) {
  return cell.notAssessed.length === 0 ? [] : [node('details', {},
    node('summary', {}, `Not assessed: ${cell.notAssessed.map(one => one.name).join(', ')}`),
    node('ul', {}, ...cell.notAssessed.map(one => node('li', {}, node('small', {}, `${one.name}: ${one.cause}`)))))];
}

function measures(cell) {
  const rows = cell.measures.map(one => node('tr', one.grade && one.grade !== 'pass' ? { class: 'beyond' } : {},
    node('th', { scope: 'row', title: one.meaning }, one.name.replaceAll('_', '_\u200b')), node('td', {}, one.value), node('td', {}, one.questionable), node('td', {}, one.reject)));
  const head = node('tr', {}, ...['Measure', 'Value', 'Questionable', 'Reject'].map(name => node('th', { scope: 'col' }, name)));
  return node('details', {}, node('summary', {}, 'Measures and limits'), node('table', {}, node('thead', {}, head), node('tbody', {}, ...rows)));
}
