/** Tables and drawings for the cells: nothing here knows a course. */

const element = (name, properties, ...inside) => {
  const made = Object.assign(document.createElement(name), properties);
  made.append(...inside);
  return made;
};

/** A table under a line that says what it is; a heading that begins with a space is over numbers. It scrolls where a page is too narrow. */
export function table(about, head, rows) {
  const kind = (k) => (head[k].startsWith(' ') ? 'number' : '');
  const headings = head.map((text, k) => element('th', { scope: 'col', className: kind(k) }, text.trim()));
  const body = rows.map((row) =>
    element('tr', {}, ...row.map((text, k) => element('td', { className: kind(k) }, String(text)))),
  );
  const made = element(
    'table',
    {},
    element('thead', {}, element('tr', {}, ...headings)),
    element('tbody', {}, ...body),
  );
  const sideways = element('div', { className: 'sideways', tabIndex: 0, role: 'group', ariaLabel: about }, made);
  return element('div', {}, element('p', { className: 'about' }, about), sideways);
}

const MARGIN = 20;

/** A drawing of parts `[name, attributes, text]`, large enough for the given points; `says` is for who cannot see it. */
export function drawing(says, points, parts) {
  const node = (name, attributes, ...inside) => {
    const made = document.createElementNS('http://www.w3.org/2000/svg', name);
    for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value));
    made.append(...inside);
    return made;
  };
  const [left, top] = [0, 1].map((k) => Math.min(...points.map((point) => point[k])) - MARGIN);
  const [right, bottom] = [0, 1].map((k) => Math.max(...points.map((point) => point[k])) + MARGIN);
  const viewBox = [left, top, right - left, bottom - top].join(' ');
  return node(
    'svg',
    { viewBox, role: 'img', 'aria-label': says },
    ...parts.map(([name, attributes, text = '']) => node(name, attributes, text)),
  );
}

/** The value of a result; a cell that cannot have it says why. */
export function must(result) {
  if (result.ok) return result.value;
  throw new Error(result.findings.map(({ message }) => message).join(' '));
}
