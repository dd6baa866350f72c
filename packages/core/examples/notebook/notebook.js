/** Runs the cells of the page in their order, and shows of each its source and below that its result, or what went wrong. */
const modules = import.meta.glob('./cells/*.js');
const sources = import.meta.glob('./cells/*.js', { query: '?raw', import: 'default' });

const element = (name, className, text = '') =>
  Object.assign(document.createElement(name), { className, textContent: text });

for (const cell of document.querySelectorAll('[data-cell]')) {
  const file = `./cells/${cell.dataset.cell}.js`;
  const code = element('pre', 'sideways');
  code.tabIndex = 0;
  code.append(element('code', '', (await sources[file]()).trim()));
  const result = element('div', 'result');
  result.append(element('p', 'waiting', 'Running …'));
  cell.append(code, result);
  try {
    const { default: shown } = await modules[file]();
    result.replaceChildren(shown);
  } catch (error) {
    result.replaceChildren(element('p', 'problem', error.message));
  }
}
document.body.dataset.done = 'true';
