/** adapter-rules.js: what stands between two pins, in words. No DOM. */
import { number } from '../words-rules.js';

/** @param {any} [via] @returns {string} such as "straight", "divider 10 kΩ over 4.7 kΩ" */
export function viaWords(via) {
  switch (via?.via ?? 'straight') {
    case 'straight':
      return 'straight';
    case 'preamp':
      return 'preamp';
    case 'resistor':
      return ohmsWords(via.ohms);
    case 'divider':
      return `divider ${ohmsWords(via.upperOhms)} over ${ohmsWords(via.lowerOhms)}${via.supplyPin ? ` from supply pin ${via.supplyPin}` : ''}`;
    case 'switch':
      return `switch: ${Object.entries(via.positions ?? {}).map(([position, each]) => `${position} ${viaWords(each)}`).join(', ')}`;
    case 'tied':
      return via.ohms ? `tied to ground through ${ohmsWords(via.ohms)}` : 'tied to ground';
    case 'open':
      return 'left open';
    default:
      return String(via.via);
  }
}

/** An adapter's routes by instrument pin, then by synth pin; what touches only the synth comes last. @param {any} [adapter] */
export function routesInOrder(adapter) {
  const place = (label) => (label === undefined ? Infinity : Number(label));
  const apart = (one, other) => {
    const [first, second] = [place(one), place(other)];
    return first === second || Number.isNaN(first - second) ? String(one).localeCompare(String(other)) : first - second;
  };
  return Object.values(adapter?.routes ?? {}).sort((one, other) => apart(one.instrumentPin, other.instrumentPin) || apart(one.synthPin, other.synthPin));
}

/** "4.7 kΩ". @param {number} ohms */
export function ohmsWords(ohms) {
  if (ohms >= 1e6) return `${number(ohms / 1e6)} MΩ`;
  if (ohms >= 1e3) return `${number(ohms / 1e3)} kΩ`;
  return `${number(ohms)} Ω`;
}
