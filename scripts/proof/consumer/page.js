/** The page works out the figures itself, then has its worker do it. */
import { figuresOf } from './figures.js';

const names = ['full.gpx', 'half.gpx'];
const bytes = await Promise.all(
  names.map(async (name) => new Uint8Array(await (await fetch(`./${name}`)).arrayBuffer())),
);
const plan = await (await fetch('./plan.json')).text();
const files = Object.fromEntries(names.map((name, k) => [name, bytes[k]]));

function show(id, figures) {
  const output = document.createElement('output');
  output.id = id;
  output.textContent = JSON.stringify(figures);
  document.body.append(output);
}

show('page', figuresOf(plan, files));
const worker = new Worker(new URL('./worker.js', import.meta.url), { type: 'module' });
worker.addEventListener('message', ({ data }) => show('worker', data));
worker.addEventListener('error', ({ message }) => show('worker', { failed: message }));
worker.postMessage({ plan, files }, []);
