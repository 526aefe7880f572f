/**
 * smf-rules.js: what came over MIDI as a Standard MIDI File, format 0. No DOM.
 * 480 ticks a quarter at 120 a minute: 960 ticks a second.
 */

/** @typedef {{ at: number, data: number[] }} Message  at in milliseconds from the start of the recording */

const TICKS_PER_MILLI = 0.96;

/**
 * @param {Message[]} messages in order of time
 * @returns {Uint8Array}
 */
export function midiFile(messages) {
  const track = [0x00, 0xff, 0x51, 0x03, 0x07, 0xa1, 0x20];
  let last = 0;
  for (const { at, data } of messages) {
    const tick = Math.max(last, Math.round(Math.max(0, at) * TICKS_PER_MILLI));
    track.push(...variableLength(tick - last), ...data);
    last = tick;
  }
  track.push(0x00, 0xff, 0x2f, 0x00);
  return Uint8Array.from([
    ...ascii('MThd'), ...number32(6), 0, 0, 0, 1, 0x01, 0xe0,
    ...ascii('MTrk'), ...number32(track.length), ...track,
  ]);
}

/** Only messages of a channel belong in a take: no clock, no system exclusive. @param {ArrayLike<number>} data */
export function isKept(data) {
  return data.length >= 2 && data[0] >= 0x80 && data[0] < 0xf0;
}

/**
 * A note that starts or ends; a start of velocity 0 is an end.
 *
 * @param {ArrayLike<number>} data
 * @returns {{ kind: 'on' | 'off', channel: number, note: number, velocity: number } | null} channel from 1; null for anything else
 */
export function noteMessage(data) {
  const command = data[0] & 0xf0;
  if (data.length < 3 || (command !== 0x90 && command !== 0x80)) return null;
  const velocity = data[2];
  return { kind: command === 0x90 && velocity > 0 ? 'on' : 'off', channel: (data[0] & 0x0f) + 1, note: data[1], velocity };
}

/** Source: Standard MIDI Files 1.0, "Conventions". @param {number} amount 0 to 268435455 */
export function variableLength(amount) {
  const bytes = [amount & 0x7f];
  for (let rest = amount >>> 7; rest > 0; rest >>>= 7) bytes.unshift(0x80 | (rest & 0x7f));
  return bytes;
}

function ascii(text) {
  return [...text].map((letter) => letter.charCodeAt(0));
}

function number32(amount) {
  return [amount >>> 24, (amount >>> 16) & 0xff, (amount >>> 8) & 0xff, amount & 0xff];
}
