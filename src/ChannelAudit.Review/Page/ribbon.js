// The session above the cell: one lane a channel on the true time axis.
import { $, clock, drawn, markMore, node, now, sign } from './parts.js';
import { ask } from './server.js';

const heights = { pass: 0.35, questionable: 0.6, reject: 0.9 };
const stepsS = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200];
const roomForTime = 110;
let range = null;

export async function showRibbon() {
  $('session').hidden = now.state.isBlind;
  if (now.state.isBlind) {
    return;
  }
  const session = await ask(`/ribbon?n=${now.cell.number}`);
  $('session-name').replaceChildren(node('bdi', { title: session.recording }, session.recording));
  const row = Math.max(12, Math.min(18, Math.floor(108 / session.channels.length)));
  $('names').replaceChildren(...session.channels.map(channel => name(channel, row)));
  const width = Math.max(200, $('lanes').clientWidth);
  const x = time => 2 + (width - 4) * Math.min(1, Math.max(0, time / session.durationS));
  drawAxis(session, width, x);
  drawLanes(session, width, row, x);
  markShown();
}

function name(channel, row) {
  const made = node('span', { title: `${channel.name}: ${channel.verdict}` }, node('i', { class: channel.verdict }, sign(channel.verdict)), ' ', channel.name);
  made.style.height = made.style.lineHeight = `${row}px`;
  made.style.fontSize = row < 15 ? '11px' : '12px';
  return made;
}

function drawAxis(session, width, x) {
  const picture = drawn('svg', { viewBox: `0 0 ${width} 16`, 'aria-hidden': 'true' });
  const step = stepsS.find(one => x(one) - x(0) >= roomForTime) ?? session.durationS;
  for (let time = 0; time <= session.durationS; time += step) {
    const isLast = x(time) > width - 30;
    picture.append(drawn('text', { x: time === 0 ? 0 : isLast ? width : x(time), y: 11, 'text-anchor': time === 0 ? 'start' : isLast ? 'end' : 'middle' }, clock(time)));
    picture.append(drawn('line', { x1: x(time), x2: x(time), y1: 12, y2: 16 }));
  }
  $('axis').replaceChildren(picture);
}

function drawLanes(session, width, row, x) {
  const high = row * session.channels.length;
  const picture = drawn('svg', {
    viewBox: `0 0 ${width} ${high}`, role: 'img',
    'aria-label': `Session ${session.recording}: ${session.channels.map(one => `${one.name} ${one.verdict}`).join(', ')}. A click leads to a trial; the arrow keys do too.`,
  });
  picture.style.height = `${high}px`;
  range = null;
  session.channels.forEach((channel, place) => {
    const top = place * row;
    picture.append(drawn('rect', { class: 'lane', x: 0, y: top + 1, width, height: row - 2 }));
    if (channel.cells.some(one => one.number === now.cell.number)) {
      range = { x, mark: drawn('rect', { class: 'range', y: top + 1, height: row - 2 }) };
      picture.append(range.mark);
    }
    channel.cells.forEach(one => drawTrial(picture, channel, one, { top, row, x }));
  });
  $('lanes').replaceChildren(picture);
  const here = session.channels.findIndex(channel => channel.cells.some(one => one.number === now.cell.number)) * row;
  const ribbon = $('ribbon');
  if (here < ribbon.scrollTop || here + 2 * row > ribbon.scrollTop + ribbon.clientHeight) {
    ribbon.scrollTop = here - row;
  }
  markMore(ribbon);
}

function drawTrial(picture, channel, one, { top, row, x }) {
  const from = x(one.fromS);
  const wide = Math.max(3, x(one.toS) - from);
  const high = (row - 4) * heights[one.final];
  picture.append(drawn('rect', { class: one.final, x: from, y: top + row - 2 - high, width: wide, height: high }));
  if (one.isDecided) {
    picture.append(drawn('circle', { class: 'decided', cx: from + wide / 2, cy: top + 3.5, r: row < 16 ? 2 : 2.5 }));
  }
  const hit = drawn('rect', { class: one.number === now.cell.number ? 'hit here' : 'hit', x: from, y: top + 1, width: wide, height: row - 2, 'data-n': one.number });
  hit.append(drawn('title', {}, `${channel.name}, trial ${one.trial}: ${one.final}${one.isDecided ? ', decided' : ''}`));
  picture.append(hit);
}

// The stretch of time that the picture shows.
export function markShown() {
  if (range && now.view) {
    range.mark.setAttribute('x', range.x(now.view.from));
    range.mark.setAttribute('width', Math.max(2, range.x(now.view.to) - range.x(now.view.from)));
  }
}
