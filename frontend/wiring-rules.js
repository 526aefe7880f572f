/** wiring-rules.js: what the wiring bench asks the server, and what it tells about a rig as a whole. No DOM. */
import { missingIn } from './parts/connector-rules.js';
import { listed } from './words-rules.js';

/**
 * An instrument as the bench sees it.
 *
 * @param {any} content instrument with a connector
 */
export function instrumentSide({ connector, strings, pickup }) {
  return {
    connector,
    openNotes: Object.fromEntries(Object.entries(strings).map(([number, { note }]) => [number, note])),
    // Nothing is predicted of a pickup whose capacitance nobody knows.
    ...(pickup?.capacitancePicofarads ? {
      pickup: {
        sourcePicofarads: pickup.capacitancePicofarads,
        cableMetres: pickup.cableMetres ?? 0,
        ...(pickup.cablePicofaradsPerMetre ? { cablePicofaradsPerMetre: pickup.cablePicofaradsPerMetre } : {}),
      },
    } : {}),
  };
}

/** A synth as the bench sees it. @param {any} content synth with a connector */
export function synthSide({ connector, controlLines, inputOhms, supplyMilliamps }) {
  return {
    connector,
    controlLines: controlLines ?? {},
    ...(inputOhms ? { inputOhms } : {}),
    ...(supplyMilliamps ? { supplyMilliamps } : {}),
  };
}

/**
 * What keeps the bench from looking at the wiring.
 *
 * @param {any} instrument content
 * @param {any} synth content
 * @returns {string | null} a sentence, or null if it can look
 */
export function missingForBench(instrument, synth) {
  const without = [instrument, synth].filter(({ connector }) => !connector).map(({ title }) => title);
  if (without.length) return `Write down the ${without.length === 1 ? 'socket' : 'sockets'} of ${listed(without)} first, pin by pin; “not known yet” is an answer too.`;
  return missingIn(instrument.connector) ?? missingIn(synth.connector);
}

/** Labels of the pins that carry something, such as every supply. @param {any} [connector] @param {(role: any) => boolean} fits */
export function pinsThat(connector, fits) {
  return Object.entries(connector?.pins ?? {}).filter(([, { role }]) => fits(role)).map(([label]) => label);
}

/**
 * Which input each string reaches through the adapter, whatever stands in the way.
 *
 * @param {any} adapter
 * @param {any} instrument connector
 * @param {any} synth connector
 * @returns {Record<string, number>} input by string number
 */
export function inputsByRoutes(adapter, instrument, synth) {
  const inputs = {};
  for (const { instrumentPin, synthPin, via } of Object.values(adapter?.routes ?? {})) {
    const string = instrument?.pins?.[instrumentPin]?.role;
    const input = synth?.pins?.[synthPin]?.role;
    if (string?.carries !== 'string' || input?.carries !== 'string' || via?.via === 'open' || via?.via === 'tied') continue;
    inputs[string.string] = input.string;
  }
  return inputs;
}

/**
 * Strings whose input in the rig is another than the adapter leads to.
 *
 * @param {Record<string, { input?: number }>} assignments
 * @param {Record<string, number>} inputs by string, see inputsByRoutes
 * @returns {string[]} string numbers, highest string first
 */
export function stringsElsewhere(assignments, inputs) {
  return Object.keys({ ...assignments, ...inputs })
    .sort((one, other) => Number(one) - Number(other))
    .filter((string) => Object.keys(inputs).length > 0 && assignments?.[string]?.input !== inputs[string]);
}

/**
 * How the wiring stands, in words: judged only when all of it could be looked at.
 *
 * @param {{ sheet: any, missing: string | null, isEmpty?: boolean }} state  sheet: the server's answer or null; missing: what is not whole yet
 * @returns {{ isJudged: boolean, isReady: boolean, mark: string, words: string }}
 */
export function standing({ sheet, missing, isEmpty = false }) {
  if (!sheet || missing || isEmpty) {
    return { isJudged: false, isReady: false, mark: 'Not judged yet', words: missing ?? (isEmpty ? 'There are no routes yet.' : 'Looking …') };
  }
  return { isJudged: true, isReady: sheet.readyToSolder, ...standingWords(sheet) };
}

/** What the mark says. @param {{ readyToSolder: boolean, findings: { severity: string }[] }} sheet */
export function standingWords({ readyToSolder, findings }) {
  const count = (severity) => findings.filter((finding) => finding.severity === severity).length;
  const [unsafe, faulty, advice] = [count('unsafe'), count('faulty'), count('advice')];
  const rest = [
    faulty ? `${faulty} that will not work` : '',
    advice ? `${advice} to think about` : '',
  ].filter(Boolean);
  if (!readyToSolder) return { mark: 'Not ready to solder', words: `${unsafe} unsafe${rest.length ? `, ${rest.join(', ')}` : ''}.` };
  return { mark: 'Ready to solder', words: rest.length ? `Nothing unsafe; ${rest.join(', ')}.` : 'Nothing unsafe, nothing left to say.' };
}
