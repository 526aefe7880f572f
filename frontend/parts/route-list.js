/**
 * route-list.js: the routes of an adapter, each with what the check says of it, and every one of them changeable by hand.
 *
 *   const list = RouteList(element, { bench });     // see bench-keeping.js
 *   list.show(sheet.findings);                       // or update() after the content changed
 */
import { el, fill } from '../dom.js';
import { keyedList } from '../keyed-list.js';
import { pinsThat } from '../wiring-rules.js';
import { pinOrder } from './connector-rules.js';
import { Findings } from './findings.js';
import { WAYS, WAYS_OF_A_SWITCH, missingInRoute, newRouteId, newWay, pinWords, unjoined, wayWords, withWay, lineOf } from './route-rules.js';
import { WayFields } from './way-fields.js';

/** @param {HTMLElement} element @param {{ bench: import('../bench-keeping.js').BenchKeeping }} state */
export function RouteList(element, { bench }) {
  const general = Findings(el('div'), { foldAdvice: true });
  const list = el('ul', { class: 'ruled' });
  const left = el('p', { class: 'pencil' });
  const routes = () => bench.rig.content.adapter?.routes ?? {};
  const instrument = () => bench.instrument.content.connector;
  const synth = () => bench.synth.content;
  let findings = [];
  let opened = '';
  element.classList.add('route-list');
  fill(element, general.element, list, left, el('div', { class: 'buttons' }, el('button', { type: 'button', on: { click: add } }, 'Another route')));
  update();
  return { element, update, show };

  function show(next) {
    findings = next;
    update();
  }

  function update() {
    const ids = Object.keys(routes()).sort(inOrder);
    general.show(findings.filter((finding) => !finding.routes.some((id) => Object.hasOwn(routes(), id))));
    keyedList(list, ids, (id) => id, RouteLine, (line) => line.update());
    const free = [
      ...unjoined({ routes: routes() }, instrument(), 'instrumentPin').map((label) => `instrument ${pinWords(label, instrument())}`),
      ...unjoined({ routes: routes() }, synth().connector, 'synthPin').map((label) => `synth ${pinWords(label, synth().connector, true)}`),
    ];
    left.textContent = free.length ? `Not joined to anything: ${free.join('; ')}.` : '';
  }

  /** By instrument pin, then by synth pin; what touches only the synth comes last. */
  function inOrder(one, other) {
    const rank = (id) => {
      const { instrumentPin, synthPin } = routes()[id];
      const place = (label) => (label === undefined ? 1e6 : Number.isNaN(Number(label)) ? 1e5 : Number(label));
      return place(instrumentPin) * 1e6 + place(synthPin);
    };
    return rank(one) - rank(other) || one.localeCompare(other);
  }

  function change(edit) {
    bench.rig.change((content) => {
      content.adapter ??= { routes: {} };
      edit(content.adapter.routes);
    });
  }

  function add() {
    opened = newRouteId(routes());
    change((all) => { all[opened] = { via: { via: 'straight' } }; });
    list.querySelector('details[open] select')?.focus();
  }

  function RouteLine(id) {
    const route = () => routes()[id];
    const summary = el('span', { class: 'joins' });
    const through = el('span', { class: 'through' });
    const missing = el('p', { class: 'unsafe', role: 'status' });
    const told = Findings(el('div'));
    const ends = el('div', { class: 'ends' });
    const positions = el('div');
    const fields = el('div');
    const from = pinSelect('instrumentPin', 'From instrument', () => instrument(), false);
    const to = pinSelect('synthPin', 'To synth', () => synth().connector, true);
    const way = el('select', { 'aria-label': `What stands between, route ${id}` }, WAYS.map(([value, words]) => el('option', { value }, words)));
    const folded = el('details', { open: opened === id },
      el('summary', {}, el('span', {}, summary, through)),
      el('div', { class: 'inside' }, ends, fields, positions,
        el('div', { class: 'buttons' }, el('button', { type: 'button', class: 'quiet', on: { click: () => change((all) => { delete all[id]; }) } }, 'Take this route out'))));
    const line = el('li', { class: 'route' }, folded, missing, told.element);
    const shown = { via: '', part: null };
    fill(ends, from.element, el('label', {}, el('span', { class: 'label' }, 'Through'), way), to.element);
    way.addEventListener('change', () => change((all) => {
      all[id] = withWay(all[id], way.value, pinsThat(synth().connector, ({ carries }) => carries === 'supply'));
    }));
    showRoute();
    return { element: line, update: showRoute };

    function showRoute() {
      const { instrumentPin, synthPin, via = { via: 'straight' } } = route();
      const starts = instrumentPin !== undefined ? `instrument ${pinWords(instrumentPin, instrument())}` : via.supplyPin ? `synth ${pinWords(via.supplyPin, synth().connector, true)}` : '';
      const goes = synthPin !== undefined ? `synth ${pinWords(synthPin, synth().connector, true)}` : '';
      summary.textContent = [starts, goes].filter(Boolean).join(' → ') || 'a new route';
      through.textContent = wayWords(via);
      missing.textContent = missingInRoute(route()) ?? '';
      missing.hidden = !missing.textContent;
      way.value = via.via;
      from.update();
      to.update();
      const mine = findings.filter((finding) => finding.routes.includes(id));
      line.classList.toggle('unsafe-route', mine.some(({ severity }) => severity === 'unsafe'));
      told.show(mine);
      if (shown.via !== via.via) {
        shown.via = via.via;
        fill(fields);
        fill(positions);
        shown.part = via.via === 'switch' ? SwitchPositions(positions) : WayFields(fields, { read: () => route().via ?? { via: 'straight' }, edit: editWay, around: around(route) });
      }
      shown.part.update();
    }

    function editWay(edit) {
      change((all) => {
        all[id].via ??= { via: 'straight' };
        edit(all[id].via);
      });
    }

    function SwitchPositions(place) {
      const entries = el('ul', { class: 'ruled' });
      fill(place, entries, el('div', { class: 'buttons' }, el('button', { type: 'button', on: { click: addPosition } }, 'Another position')));
      return { update: () => keyedList(entries, Object.keys(route().via.positions), (name) => name, Position, (part) => part.update()) };

      function addPosition() {
        editWay(({ positions: all }) => {
          let count = Object.keys(all).length + 1;
          while (Object.hasOwn(all, `position ${count}`)) count++;
          all[`position ${count}`] = { via: 'open' };
        });
      }

      function Position(name) {
        const each = () => route().via.positions[name];
        const word = el('input', { value: name, maxlength: 40, 'aria-label': 'Word beside this position' });
        const choice = el('select', { 'aria-label': `What position ${name} does` }, WAYS_OF_A_SWITCH.map(([value, words]) => el('option', { value }, words)));
        const inner = el('div');
        const trouble = el('p', { class: 'unsafe', role: 'status' });
        word.addEventListener('change', () => {
          const objection = rename(name, word.value.trim());
          trouble.textContent = objection ?? '';
          word.setAttribute('aria-invalid', String(Boolean(objection)));
        });
        choice.addEventListener('change', () => editWay(({ positions: all }) => {
          all[name] = newWay(choice.value, { supplyPins: pinsThat(synth().connector, ({ carries }) => carries === 'supply'), isFromInstrument: route().instrumentPin !== undefined });
        }));
        const partOf = WayFields(inner, { read: each, edit: (edit) => editWay(({ positions: all }) => edit(all[name])), around: around(route) });
        const entry = el('li', { class: 'position' },
          el('div', { class: 'ends' }, el('label', {}, el('span', { class: 'label' }, 'Position'), word), el('label', {}, el('span', { class: 'label' }, 'Through'), choice),
            el('button', { type: 'button', class: 'quiet', 'aria-label': `Take out position ${name}`, on: { click: () => editWay(({ positions: all }) => { delete all[name]; }) } }, 'take out')), trouble, inner);
        showPosition();
        return { element: entry, update: showPosition };

        function showPosition() {
          choice.value = each().via;
          partOf.update();
        }
      }

      /** @returns {string | null} why it keeps the word it has */
      function rename(was, now) {
        if (now === was) return null;
        if (!now) return `A position needs a word; it is still called “${was}”.`;
        if (Object.hasOwn(route().via.positions, now)) return `Another position is called “${now}”; this one is still called “${was}”.`;
        editWay((via) => {
          via.positions = Object.fromEntries(Object.entries(via.positions).map(([name, each]) => [name === was ? now : name, each]));
        });
        return null;
      }
    }

    function pinSelect(end, label, connector, isSynths) {
      const select = el('select', { 'aria-label': `${label} pin, route ${id}` });
      let offered = '';
      select.addEventListener('change', () => change((all) => {
        if (select.value === '') delete all[id][end];
        else all[id][end] = select.value;
      }));
      return {
        element: el('label', {}, el('span', { class: 'label' }, label), select),
        update() {
          const pins = connector()?.pins ?? {};
          const current = route()[end];
          const labels = [...new Set([...pinOrder(pins), ...(current === undefined ? [] : [current])])];
          const words = [['', 'no pin'], ...labels.map((each) => [each, pinWords(each, connector(), isSynths)])];
          // Filled again only when the pins have changed: an open list would close.
          if (offered !== JSON.stringify(words)) {
            offered = JSON.stringify(words);
            fill(select, words.map(([value, text]) => el('option', { value }, text)));
          }
          select.value = current ?? '';
        },
      };
    }
  }

  function around(route) {
    return {
      synth,
      lineKey: () => lineOf(synth().connector, route().synthPin),
      hasInstrumentPin: () => route().instrumentPin !== undefined,
      parts: () => {
        const { series, tolerancePercent, ratingMilliwatts } = bench.rig.content.adapter?.parts ?? {};
        return { ...(series ? { series } : {}), ...(tolerancePercent ? { tolerancePercent } : {}), ...(ratingMilliwatts ? { ratingMilliwatts } : {}) };
      },
    };
  }
}
