/**
 * level-requests.js: sends recordings to the level bench. Files may be long, so both halves are watched: how much has been
 * sent, then how much has been measured.
 *
 *   const upload = await sendRecording(files, (fraction) => …);      // { upload, recording }
 *   const report = await measureUpload(upload.upload, query, segments, (fraction) => …);
 */
import { Away, answered, get, ofNotebook } from './api.js';

const BENCH = '/api/bench/levels';
const ASK_EVERY_MILLIS = 400;

/** @param {File[]} files one with a channel per input, or mono files @param {(fraction: number) => void} onSent */
export function sendRecording(files, onSent) {
  const query = new URLSearchParams({ later: 'true', name: files[0].name });
  if (files.length === 1) return send(`${BENCH}?${query}`, files[0], 'audio/wav', onSent);
  const form = new FormData();
  for (const file of files) form.append('files', file, file.name);
  return send(`${BENCH}?${query}`, form, null, onSent);
}

/** @param {string} upload @param {Record<string, string>} query @param {any[]} segments none: to be found @param {(fraction: number) => void} onMeasured */
export async function measureUpload(upload, query, segments, onMeasured) {
  let isDone = false;
  const watch = setInterval(async () => {
    try {
      const { fraction } = await get(`${BENCH}/${upload}`);
      // Asked before it was measured, answered afterwards.
      if (!isDone) onMeasured(fraction);
    } catch {
      // The answer itself tells what is wrong.
    }
  }, ASK_EVERY_MILLIS);
  try {
    return await send(`${BENCH}/${upload}?${new URLSearchParams(query)}`, JSON.stringify(segments.length ? { segments } : {}), 'application/json');
  } finally {
    isDone = true;
    clearInterval(watch);
  }
}

/** A take of the exercise. @param {File} file @param {Record<string, string>} query */
export function measureTake(file, query) {
  return send(`${BENCH}?${new URLSearchParams({ ...query, name: file.name })}`, file, 'audio/midi');
}

/** What a meter showed. @param {any} body @param {Record<string, string>} query */
export function measureReadings(body, query) {
  return send(`${BENCH}?${new URLSearchParams(query)}`, JSON.stringify(body), 'application/json');
}

// XMLHttpRequest rather than fetch: only it tells how much of a body has been sent. No patience: long files take their time.
function send(path, body, type, onSent = () => {}) {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', path);
    request.setRequestHeader('Accept', 'application/json');
    for (const [name, value] of Object.entries(ofNotebook())) request.setRequestHeader(name, value);
    if (type) request.setRequestHeader('Content-Type', type);
    request.upload.addEventListener('progress', ({ loaded, total, lengthComputable }) => {
      if (lengthComputable && total) onSent(loaded / total);
    });
    request.addEventListener('load', () => {
      try {
        resolve(answered(request.status, request.responseText));
      } catch (failure) {
        reject(failure);
      }
    });
    request.addEventListener('error', () => reject(new Away()));
    request.send(body);
  });
}
